using PulseStream.Readings;

namespace PulseStream.Cli.Output;

/// <summary>The 95 % interval of a saturation as people read it.</summary>
internal static class Interval
{
    /// <summary>Rounded outwards: what it holds, it holds as it is shown, and it is never shown as a point.</summary>
    public static string Outward(Saturation spo2) => !spo2.HasInterval
        ? "interval not told"
        : $"{Math.Floor(10 * spo2.LowPercent) / 10:0.0}–{Math.Ceiling(10 * spo2.HighPercent) / 10:0.0}";
}
