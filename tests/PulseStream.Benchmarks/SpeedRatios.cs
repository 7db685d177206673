using System.Diagnostics;
using PulseStream.Cli;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Sources.Csv;

namespace PulseStream.Benchmarks;

/// <summary>
/// Prints the speed of the core, of a replay of CSV and of one with archive, each beside the same stages in SciPy on the
/// same hour of two lights. The rounds of all take turns, so that what else the machine does hits them alike.
/// </summary>
internal static class SpeedRatios
{
    private const int Seconds = 3600;
    private const int Rounds = 5;
    private const int MinuteSeconds = 60;

    // The first passes are compiled while they run.
    private const int WarmUpPasses = 10;
    private const int WarmUpReplays = 3;

    public static async Task<int> Print()
    {
        var folder = Directory.CreateTempSubdirectory("pulsestream-ratios-").FullName;
        try
        {
            await PrintAt(100, folder);
            await PrintAt(250, folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }

    private static async Task PrintAt(int hz, string folder)
    {
        var samples = TwoLightSignal.At(hz, Seconds);
        var file = Path.Combine(folder, $"hut-{hz}.csv");
        Write(file, samples, hz);
        for (var pass = 0; pass < WarmUpPasses; pass++)
        {
            Core([new(0, samples)], 1, hz);
        }

        for (var pass = 0; pass < WarmUpReplays; pass++)
        {
            await Replay(file, "--archive", Path.Combine(folder, $"warm-up-{hz}-{pass}"));
        }

        var minute = TwoLightSignal.BlocksOf(TwoLightSignal.At(hz, MinuteSeconds), hz);
        List<double> scipy = [], core = [], blocks = [], replay = [], archive = [];
        for (var round = 0; round < Rounds; round++)
        {
            scipy.Add(ScipyPipeline.SamplesPerSecond(Seconds, hz));
            core.Add(samples.Length / Core([new(0, samples)], 1, hz));
            blocks.Add(samples.Length / Core(minute, Seconds / MinuteSeconds, hz));
            replay.Add(samples.Length / await Replay(file));
            archive.Add(samples.Length / await Replay(file, "--archive", Path.Combine(folder, $"archive-{hz}-{round}")));
        }

        Console.WriteLine($"{hz} Hz, {Seconds} s, median of {Rounds}:");
        Print("SciPy, the same stages", scipy, scipy);
        Print("core, an hour in memory as SciPy has it", core, scipy);
        Print("core, a minute again and again in blocks as a source hands them over", blocks, scipy);
        Print("replay of CSV", replay, scipy);
        Print("replay of CSV with archive", archive, scipy);
    }

    private static double Core(IReadOnlyList<SampleBlock> blocks, int times, int hz)
    {
        var header = TwoLightSignal.HeaderAt(hz);
        var options = new ReadingOptions();
        var room = new WindowRoom(new SignalDesign(header.Rate, options.Signal));
        var reader = new FingerReader(header, CalibrationCurve.TextbookLine, options, room);
        var nobody = new Nobody();
        var length = blocks.Sum(block => (long)block.Samples.Length);
        var clock = Stopwatch.StartNew();
        for (var time = 0; time < times; time++)
        {
            foreach (var block in blocks)
            {
                reader.Read(new((time * length) + block.FirstIndex, block.Samples), nobody);
            }
        }

        return nobody.Seconds == Seconds ? clock.Elapsed.TotalSeconds : throw new InvalidOperationException("Seconds are missing.");
    }

    private static async Task<double> Replay(string file, params string[] more)
    {
        var clock = Stopwatch.StartNew();
        var status = await PulseStreamProgram.RunAsync(
            ["replay", file, "--format", "ndjson", .. more], new(Stream.Null, Stream.Null, Console.Error, TimeProvider.System), CancellationToken.None);
        return status == 0 ? clock.Elapsed.TotalSeconds : throw new InvalidOperationException($"The replay ended with {status}.");
    }

    private static void Write(string file, Sample[] samples, int hz)
    {
        using var lines = new StreamWriter(file);
        var writer = new CsvRecordingWriter(lines, SampleColumns.Red | SampleColumns.Infrared, new SampleRate(hz));
        foreach (var block in TwoLightSignal.BlocksOf(samples, hz))
        {
            writer.Write(block);
        }
    }

    private static void Print(string name, List<double> speeds, List<double> scipy) =>
        Console.WriteLine($"  {name}: {Median(speeds) / 1e6:F2} million samples a second, {Median([.. speeds.Zip(scipy, (own, other) => own / other)]):F2} times SciPy");

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);
}
