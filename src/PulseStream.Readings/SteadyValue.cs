namespace PulseStream.Readings;

/// <summary>
/// Accepts a reading once the same whole percent has been held for five usable seconds. The whole percent follows the
/// value only when it has left it by more than 0.7 points, so that a value on a rounding boundary still settles. Where the
/// five seconds do not know it well enough, later ones that hold it may.
/// </summary>
internal sealed class SteadyValue(ReadingOptions options)
{
    private const double Hysteresis = 0.7;
    private readonly UsableSecond[] held = new UsableSecond[Math.Max(1, options.HeldSeconds)];
    private int whole;
    private int count;
    private bool isAccepted;

    /// <summary>The whole percent of the reading held now; null where none is.</summary>
    public int? HeldPercent => isAccepted ? whole : null;

    /// <summary>For how many consecutive usable seconds the same whole percent has been held; one short of a reading while it is not known well enough.</summary>
    public int Seconds => isAccepted ? count : Math.Min(count, held.Length - 1);

    /// <summary>Takes the next second; a reading where one is accepted at it.</summary>
    public Reading? Step(in Second second)
    {
        if (second.Usable is not { Spo2: { } spo2 } usable)
        {
            Restart();
            return null;
        }

        if (count == 0 || Math.Abs(spo2.Percent - whole) > Hysteresis)
        {
            Restart();
            whole = (int)Math.Round(spo2.Percent, MidpointRounding.AwayFromZero);
        }

        held[count % held.Length] = usable;
        count++;
        if (isAccepted || count < held.Length)
        {
            return null;
        }

        var reading = Reading();
        isAccepted = IsKnownWell(reading.Spo2);
        return isAccepted ? reading : null;
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

    // An instrument that tells no interval has none that is too wide.
    private bool IsKnownWell(in Saturation spo2) =>
        !(Math.Max(spo2.HighPercent - spo2.Percent, spo2.Percent - spo2.LowPercent) > options.WidestAcceptedPercent);

    private void Restart()
    {
        count = 0;
        isAccepted = false;
    }
}
