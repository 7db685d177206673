using PulseStream.Readings;

namespace PulseStream.Cli.Inputs;

/// <summary>Makes seconds of what an instrument showed: the last value shown in a second or standing at its end.</summary>
internal static class ShownSeconds
{
    /// <summary>The seconds from 0 to the last value, without a gap; the one that the last value begins is incomplete, as with samples, unless something was shown at its end.</summary>
    /// <param name="shown">In the order of time.</param>
    /// <param name="hasSpo2">Whether the instrument shows SpO2 at all.</param>
    public static IEnumerable<Second> Of(IReadOnlyList<ShownValue> shown, bool hasSpo2)
    {
        var next = 0;
        var last = shown[^1].LastSecond;
        for (var second = 0L; second <= last; second++)
        {
            while (next < shown.Count && shown[next].TimeSeconds < second + 1)
            {
                next++;
            }

            yield return next > 0 && shown[next - 1].TimeSeconds > second + 1 - shown[next - 1].StandsSeconds
                ? SecondOf(second, shown[next - 1], hasSpo2)
                : new UnusableSecond(second, Reasons.MissingSamples, null);
        }
    }

    private static Second SecondOf(long second, in ShownValue shown, bool hasSpo2)
    {
        double? perfusion = shown.PerfusionPercent > 0 && double.IsFinite(shown.PerfusionPercent) ? shown.PerfusionPercent : null;
        var reasons = (shown.Reasons & ~Reasons.LowPerfusion) | ReasonOf(hasSpo2 ? shown.Spo2Percent : shown.PulsePerMinute, hasSpo2 ? 100 : double.MaxValue);
        if ((reasons & ~Reasons.MissingSamples) != Reasons.None)
        {
            // The cause that the instrument tells says more than that there was no value.
            reasons &= ~Reasons.MissingSamples;
        }

        return reasons != Reasons.None
            ? new UnusableSecond(second, reasons | (shown.Reasons & Reasons.LowPerfusion), perfusion)
            : new UsableSecond(
                second,
                hasSpo2 ? Saturation.WithoutInterval(shown.Spo2Percent) : null,
                ReasonOf(shown.PulsePerMinute, double.MaxValue) == Reasons.None ? shown.PulsePerMinute : null,
                perfusion,
                shown.Reasons & Reasons.LowPerfusion);
    }

    // Instruments write 0 where they have nothing to show; no living person has it.
    private static Reasons ReasonOf(double value, double highest) =>
        double.IsNaN(value) || value == 0 ? Reasons.MissingSamples
        : value > 0 && value <= highest && double.IsFinite(value) ? Reasons.None
        : Reasons.OutOfRange;
}
