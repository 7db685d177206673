using PulseStream.Readings;
using PulseStream.Samples;

namespace PulseStream.Benchmarks;

/// <summary>Prints what a signal machine and a whole reader in steady state allocate; 1 where that is not 0.</summary>
internal static class Allocation
{
    private const int Seconds = 600;
    private const int SteadySeconds = 60;

    public static int Print() => SignalAt(100) + SignalAt(250) + ReaderAt(100) + ReaderAt(250) == 0 ? 0 : 1;

    private static long SignalAt(double hz)
    {
        var signal = SteadySignal.At(hz);
        var samples = TwoLightSignal.At(hz, Seconds);
        var before = GC.GetAllocatedBytesForCurrentThread();
        SteadySignal.Feed(signal, samples);
        var bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        Console.WriteLine($"signal machine, {hz} Hz: {(double)bytes / samples.Length} bytes per sample over {samples.Length} samples");
        return bytes;
    }

    // A minute brings its reading to be held; the ten after it tell their seconds and beats and no other reading.
    private static long ReaderAt(double hz)
    {
        var reader = new FingerReader(TwoLightSignal.HeaderAt(hz), CalibrationCurve.TextbookLine, new ReadingOptions());
        var blocks = TwoLightSignal.BlocksOf(TwoLightSignal.At(hz, SteadySeconds + Seconds), hz);
        var steady = (int)(SteadySeconds * blocks.Count / (SteadySeconds + Seconds));
        var nobody = new Nobody();
        Feed(reader, blocks, 0, steady, nobody);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Feed(reader, blocks, steady, blocks.Count, nobody);
        var bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        Console.WriteLine($"reader, {hz} Hz: {(double)bytes / Seconds} bytes per second over {Seconds} s, {nobody.Usable} of {nobody.Seconds} usable, {nobody.Readings} readings, held for {reader.SteadySeconds} s");
        return bytes;
    }

    private static void Feed(FingerReader reader, IReadOnlyList<SampleBlock> blocks, int from, int to, Nobody nobody)
    {
        for (var n = from; n < to; n++)
        {
            reader.Read(blocks[n], nobody);
        }
    }
}
