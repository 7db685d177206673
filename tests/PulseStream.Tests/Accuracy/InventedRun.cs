using PulseStream.Accuracy.Runs;

namespace PulseStream.Tests.Accuracy;

/// <summary>A desaturation run whose truth is known: what a reference showed, and what a device showed with a lag and a bias.</summary>
internal sealed record InventedRun
{
    // Where the reference begins and how much longer the device records at both ends.
    private const double Margin = 75;
    private const double HoldSeconds = 70;
    private const double FallSeconds = 25;

    public double LagSeconds { get; init; }

    public double Bias { get; init; }

    public double DeviceNoise { get; init; } = 0.5;

    public double ReferenceNoise { get; init; } = 0.2;

    public double DeviceInterval { get; init; } = 1;

    public double ReferenceInterval { get; init; } = 1;

    public double AveragingSeconds { get; init; }

    public bool IsDeviceWhole { get; init; }

    public bool HasShortEnds { get; init; }

    public int Seed { get; init; }

    public double[] Levels { get; init; } = [97, 92, 88, 84, 80, 76, 72, 96];

    /// <summary>The lag at which both agree best: an average comes half its length later.</summary>
    public double AlignedLagSeconds => LagSeconds + (AveragingSeconds / 2);

    public TimedValues Reference()
    {
        var chance = new Random(Seed);
        return Course(0, Levels.Length * (HoldSeconds + FallSeconds), ReferenceInterval, t => Truth(t) + (ReferenceNoise * SimulatedStudies.Normal(chance)));
    }

    public TimedValues Device()
    {
        var chance = new Random(Seed + 100_003);
        var margin = HasShortEnds ? 0 : Margin;
        return Course(-margin, (Levels.Length * (HoldSeconds + FallSeconds)) + margin, DeviceInterval, t =>
        {
            var shown = Averaged(t - LagSeconds) + Bias + (DeviceNoise * SimulatedStudies.Normal(chance));
            return Math.Clamp(IsDeviceWhole ? Math.Round(shown) : shown, 0, 100);
        });
    }

    private static TimedValues Course(double from, double to, double interval, Func<double, double> valueAt)
    {
        double[] times = [.. Enumerable.Range(0, (int)((to - from) / interval) + 1).Select(i => from + (i * interval))];
        return new(times, [.. times.Select(valueAt)]);
    }

    private double Averaged(double t) => AveragingSeconds == 0
        ? Truth(t)
        : Enumerable.Range(0, 40).Average(i => Truth(t - (AveragingSeconds * (i + 0.5) / 40)));

    private double Truth(double t)
    {
        var at = Math.Clamp(t / (HoldSeconds + FallSeconds), 0, Levels.Length - 1);
        var way = Math.Max(0, ((at - Math.Floor(at)) * (HoldSeconds + FallSeconds)) - HoldSeconds) / FallSeconds;
        var next = Levels[Math.Min(Levels.Length - 1, (int)at + 1)];
        return Levels[(int)at] + (way * (next - Levels[(int)at]));
    }
}
