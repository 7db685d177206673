using System.Globalization;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.OpenRecordings;

/// <summary>Reads the open recordings, which are no part of the project, and runs single channels through the reader.</summary>
internal static class OpenData
{
    public static double[][] Columns(string file)
    {
        var path = Path.Combine(Folder(), file);
        var rows = File.ReadLines(path).Skip(1).Select(line => line.Split(',').Select(NumberOf).ToArray()).ToArray();
        return [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Select(r => r[c]).ToArray())];
    }

    public static Found Run(double rateHz, SampleColumns columns, IEnumerable<Sample> samples)
    {
        var reader = new FingerReader(new("open", new SampleRate(rateHz), columns), CalibrationCurve.TextbookLine, new());
        var found = new Found();
        reader.Read(new SampleBlock(0, samples.ToArray()), found);
        reader.Finish(found);
        return found;
    }

    public static string FolderOf(string name) => Path.Combine(Folder(), name);

    private static double NumberOf(string text) =>
        double.TryParse(text, CultureInfo.InvariantCulture, out var value) ? value : double.NaN;

    private static string Folder()
    {
        var told = Environment.GetEnvironmentVariable("PULSESTREAM_OPEN_DATA");
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "PulseStream.sln")))
        {
            root = root.Parent;
        }

        var folder = told ?? Path.Combine(root?.FullName ?? ".", "..", "shared", "data");
        Assert.SkipUnless(Directory.Exists(folder), "Skipped: no open recordings; name their folder in PULSESTREAM_OPEN_DATA.");
        return folder;
    }

    internal sealed class Found : IReadingObserver
    {
        public List<Beat> Beats { get; } = [];

        public List<Second> Seconds { get; } = [];

        public void OnBeat(in Beat beat) => Beats.Add(beat);

        public void OnSecond(in Second second) => Seconds.Add(second);

        public void OnReading(Reading reading)
        {
        }

        public void OnSitting(Sitting sitting)
        {
        }
    }
}
