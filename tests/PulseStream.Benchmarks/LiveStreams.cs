using System.Diagnostics;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Benchmarks;

/// <summary>
/// Ten thousand live streams of 100 Hz on one core: each hands over ten samples every tenth of a second, from a moment of
/// its own. Prints how long after it was due a block's results were told, and what a stream keeps in memory.
/// </summary>
internal static class LiveStreams
{
    private const int Streams = 10_000;
    private const int Hz = 100;
    private const int BlockSamples = 10;
    private const double BlockSeconds = (double)BlockSamples / Hz;
    private const int WarmUpSeconds = 10;
    private const int MeasuredSeconds = 20;
    private const int MinuteBlocks = 60 * Hz / BlockSamples;
    private const double AllowedSeconds = 0.02;
    private const int AllowedBytes = 32 * 1024;
    private const int Seed = 1;

    public static int Print()
    {
        var readers = Readers();
        var (delays, garbage) = Run(readers);
        var bytes = KeptBytes(readers) / Streams;
        Array.Sort(delays);
        var (median, high) = (delays[delays.Length / 2], delays[(int)(delays.Length * 0.99)]);
        Console.WriteLine($"{Streams} streams of {Hz} Hz on one core, {MeasuredSeconds} s, blocks of {BlockSamples} samples, {delays.Length} blocks");
        Console.WriteLine($"from due to told: median {1000 * median:F3} ms, 99th percentile {1000 * high:F3} ms, worst {1000 * delays[^1]:F3} ms");
        Console.WriteLine($"memory a stream, after its samples: {bytes} bytes; allocated in the measured {MeasuredSeconds} s by all: {garbage} bytes");
        return high <= AllowedSeconds && bytes <= AllowedBytes ? 0 : 1;
    }

    private static FingerReader[] Readers()
    {
        var header = TwoLightSignal.HeaderAt(Hz);
        var options = new ReadingOptions();
        var room = new WindowRoom(new SignalDesign(header.Rate, options.Signal));
        return [.. Enumerable.Range(0, Streams).Select(_ => new FingerReader(header, CalibrationCurve.TextbookLine, options, room))];
    }

    // What goes when the readers go: all that they were made of and all that they have grown since.
    private static long KeptBytes(FingerReader[] readers)
    {
        var with = GC.GetTotalMemory(forceFullCollection: true);
        Array.Clear(readers);
        return with - GC.GetTotalMemory(forceFullCollection: true);
    }

    private static (double[] Delays, long Garbage) Run(FingerReader[] readers)
    {
        var random = new Random(Seed);
        var minute = TwoLightSignal.At(Hz, 60);

        // Sorted by the moment within a tenth of a second at which a stream's blocks come; where in its second a stream is stays random.
        var moments = Enumerable.Range(0, Streams).Select(_ => BlockSeconds * random.NextDouble()).Order().ToArray();
        var starts = Enumerable.Range(0, Streams).Select(_ => random.Next(MinuteBlocks)).ToArray();
        var phases = Enumerable.Range(0, Streams).Select(_ => random.Next(Hz / BlockSamples)).ToArray();
        var delays = new double[Streams * (int)(MeasuredSeconds / BlockSeconds)];
        var nobody = new Nobody();
        var warmUpRounds = (int)(WarmUpSeconds / BlockSeconds);
        var garbage = 0L;
        var clock = Stopwatch.StartNew();
        for (var block = 0; block < warmUpRounds + (delays.Length / Streams); block++)
        {
            garbage = block == warmUpRounds ? GC.GetAllocatedBytesForCurrentThread() : garbage;
            for (var stream = 0; stream < Streams; stream++)
            {
                var due = (block * BlockSeconds) + moments[stream];
                while (clock.Elapsed.TotalSeconds < due)
                {
                    Thread.SpinWait(10);
                }

                var first = (block + phases[stream]) * (long)BlockSamples;
                var at = (starts[stream] + block) % MinuteBlocks * BlockSamples;
                readers[stream].Read(new SampleBlock(first, minute.AsMemory(at, BlockSamples)), nobody);
                if (block >= warmUpRounds)
                {
                    delays[((block - warmUpRounds) * Streams) + stream] = clock.Elapsed.TotalSeconds - due;
                }
            }
        }

        return (delays, GC.GetAllocatedBytesForCurrentThread() - garbage);
    }
}
