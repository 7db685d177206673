namespace PulseStream.Readings;

/// <summary>
/// Accepts a reading once the same whole percent has been held for five usable seconds. The whole percent follows the
/// value only when it has left it by more than 0.7 points, so that a value on a rounding boundary still settles.
/// </summary>
internal sealed class SteadyValue(ReadingOptions options)
{
    private const double Hysteresis = 0.7;
    private readonly UsableSecond[] held = new UsableSecond[Math.Max(1, options.HeldSeconds)];
    private int whole;
    private int count;

    /// <summary>The whole percent of the reading held now; null where none is.</summary>
    public int? HeldPercent => count < held.Length ? null : whole;

    /// <summary>For how many consecutive usable seconds the same whole percent has been held.</summary>
    public int Seconds => count;

    /// <summary>Takes the next second; a reading where one is accepted at it.</summary>
    public Reading? Step(in Second second)
    {
        if (second.Usable is not { Spo2: { } spo2 } usable)
        {
            count = 0;
            return null;
        }

        if (count == 0 || Math.Abs(spo2.Percent - whole) > Hysteresis)
        {
            count = 0;
            whole = (int)Math.Round(spo2.Percent, MidpointRounding.AwayFromZero);
        }

        held[count % held.Length] = usable;
        count++;
        return count == held.Length ? Reading() : null;
    }

    /// <summary>The reading held now; there has to be one.</summary>
    public Reading Reading()
    {
        double percent = 0, low = 0, high = 0, perfusion = 0;
        var warnings = Reasons.None;
        foreach (ref readonly var usable in held.AsSpan())
        {
            var spo2 = usable.Spo2!.Value;
            percent += spo2.Percent / held.Length;
            low += spo2.LowPercent / held.Length;
            high += spo2.HighPercent / held.Length;
            perfusion += (usable.PerfusionPercent ?? double.NaN) / held.Length;
            warnings |= usable.Warnings;
        }

        return new(
            held[(count - 1) % held.Length].SecondIndex,
            whole,
            new(percent, low, high),
            WholeRate.MedianOf(held),
            double.IsNaN(perfusion) ? null : perfusion,
            count,
            warnings);
    }
}
