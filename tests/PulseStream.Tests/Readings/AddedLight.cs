using PulseStream.Samples;

namespace PulseStream.Tests.Readings;

/// <summary>Light that reaches the detector beside the finger.</summary>
internal static class AddedLight
{
    /// <summary>Room light: the same counts in both channels.</summary>
    /// <param name="samples">Samples without it.</param>
    /// <param name="rateHz">Their rate.</param>
    /// <param name="counts">Its counts at a time in seconds.</param>
    public static Sample?[] WithRoomLight(this Sample?[] samples, double rateHz, Func<double, double> counts) =>
        samples.With(rateHz, t => (counts(t), counts(t)));

    /// <summary>Light of its own in each channel.</summary>
    /// <param name="samples">Samples without it.</param>
    /// <param name="rateHz">Their rate.</param>
    /// <param name="counts">Counts of red and infrared at a time in seconds.</param>
    public static Sample?[] With(this Sample?[] samples, double rateHz, Func<double, (double Red, double Infrared)> counts) =>
        [.. samples.Select((sample, n) => (Sample?)Sample.OfLight(
            sample!.Value.Red + counts(n / rateHz).Red,
            sample.Value.Infrared + counts(n / rateHz).Infrared))];

    /// <summary>0 before, 1 after, smooth between.</summary>
    public static double Ramp(double t, double from, double seconds)
    {
        var x = Math.Clamp((t - from) / seconds, 0, 1);
        return x * x * (3 - (2 * x));
    }
}
