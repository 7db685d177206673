namespace PulseStream.Readings;

/// <summary>Keeps one sitting, from the finger's coming to its leaving.</summary>
internal sealed class SittingKeeper(ReadingOptions options)
{
    // Shorter absences are a finger put right, not a finger gone.
    private const int LeavingSeconds = 3;
    private readonly Dictionary<int, long> rates = [];
    private long from = -1;
    private long lastOn;
    private Reading? record;
    private Reading? lowest;
    private Reading? highest;
    private int readings;
    private bool hasSpo2;
    private Reasons reasons;

    /// <summary>Takes the next second; a sitting where one has ended with it.</summary>
    /// <param name="second">The second.</param>
    /// <param name="hasFinger">Whether something is in the clip.</param>
    /// <param name="accepted">The reading accepted at it, or null.</param>
    /// <param name="steady">The value that may be held at it.</param>
    public Sitting? Step(in Second second, bool hasFinger, Reading? accepted, SteadyValue steady)
    {
        if (!hasFinger)
        {
            return from >= 0 && second.SecondIndex - lastOn >= LeavingSeconds ? Finish() : null;
        }

        if (from < 0)
        {
            from = second.SecondIndex;
        }

        lastOn = second.SecondIndex;
        Gather(second);
        Accept(accepted, steady);
        return null;
    }

    /// <summary>Ends the sitting, if there is one.</summary>
    public Sitting? Finish()
    {
        if (from < 0)
        {
            return null;
        }

        var sitting = new Sitting(from, lastOn + 1, Outcome(), Outcome() == SittingOutcome.Accepted ? record : null, lowest, MedianRate(), readings, reasons);
        from = -1;
        record = lowest = highest = null;
        readings = 0;
        hasSpo2 = false;
        reasons = Reasons.None;
        rates.Clear();
        return sitting;
    }

    private void Gather(in Second second)
    {
        if (second.Unusable is { } refused)
        {
            reasons |= refused.Reasons;
        }
        else if (second.Usable is { } usable)
        {
            hasSpo2 |= usable.Spo2 is not null;

            // Beside a saturation the median of the rates is not told, so they are not counted either.
            if (!hasSpo2 && usable.PulseRatePerMinute is { } exact)
            {
                var rate = WholeRate.Rounded(exact);
                rates[rate] = rates.GetValueOrDefault(rate) + 1;
            }
        }
    }

    private void Accept(Reading? accepted, SteadyValue steady)
    {
        if (accepted is not null)
        {
            readings++;
            lowest = lowest is null || accepted.Spo2.Percent < lowest.Spo2.Percent ? accepted : lowest;
            highest = highest is null || accepted.WholeSpo2Percent > highest.WholeSpo2Percent ? accepted : highest;
        }

        if (steady.HeldPercent is { } percent && lastOn + 1 - from >= options.SittingSeconds
            && (record is null || percent > record.WholeSpo2Percent))
        {
            record = accepted ?? steady.Reading();
        }
    }

    private SittingOutcome Outcome()
    {
        if (readings == 0)
        {
            return SittingOutcome.None;
        }

        var isWide = highest!.WholeSpo2Percent - lowest!.WholeSpo2Percent > options.UnsettledPoints;
        return isWide || record is null ? SittingOutcome.Unsettled : SittingOutcome.Accepted;
    }

    private int? MedianRate()
    {
        var half = rates.Values.Sum() / 2;
        foreach (var (rate, seconds) in rates.OrderBy(r => r.Key))
        {
            half -= seconds;
            if (half < 0)
            {
                return hasSpo2 ? null : rate;
            }
        }

        return null;
    }
}
