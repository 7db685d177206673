using PulseStream.Readings;
using PulseStream.Triage.Policies;

namespace PulseStream.Triage;

/// <summary>
/// Follows one session: judges each accepted reading at once and each sitting at its end. Within a sitting the advice
/// only rises; <see cref="AdviceLevel.DoctorNow"/> and <see cref="AdviceLevel.Emergency"/> outlive a higher value.
/// </summary>
public sealed class SittingTriage
{
    private const double SecondsPerMinute = 60;

    private readonly TriagePolicy policy;
    private readonly Circumstances told;
    private readonly IReadOnlyList<EarlierReading> history;
    private readonly List<(double Spo2Percent, long SecondIndex)> sittings = [];
    private Circumstances circumstances;
    private AdviceLevel highest;
    private Findings? urgent;
    private Findings? inForce;
    private bool isOpen;
    private bool isAnswerOld;

    /// <summary>Starts before the first second of a session.</summary>
    /// <param name="policy">The policy to follow.</param>
    /// <param name="circumstances">The person and the device.</param>
    /// <param name="history">Readings of the same person from before the session, minutes counted back from its start.</param>
    public SittingTriage(TriagePolicy policy, Circumstances circumstances, IReadOnlyList<EarlierReading> history)
    {
        this.policy = policy;
        this.circumstances = told = circumstances;
        this.history = history;
    }

    /// <summary>How the person feels, as far as is known now.</summary>
    public Feeling Feeling => circumstances.Feeling;

    /// <summary>Judges an accepted reading.</summary>
    /// <param name="reading">The reading.</param>
    /// <returns>An advice where the level rises above <see cref="AdviceLevel.Usual"/> and above all before it in this sitting; null otherwise.</returns>
    public Advice? Follow(Reading reading)
    {
        Open();
        var findings = FindingsOf(reading, reading.SecondIndex);
        var advice = AdviceJudge.Judge(policy, findings);
        inForce = advice.Level >= highest ? findings : inForce;
        if (advice.Level <= highest)
        {
            return null;
        }

        highest = advice.Level;
        urgent = advice.Level >= AdviceLevel.DoctorNow ? findings : null;
        return advice with { SecondIndex = reading.SecondIndex };
    }

    /// <summary>
    /// Judges a sitting at its end: an accepted one by its reading of record, an unsettled one by its lowest reading, one
    /// without SpO2 by its pulse. Forgets the sitting afterwards, except as an earlier reading for the next ones.
    /// </summary>
    /// <param name="sitting">The sitting.</param>
    public Advice Close(Sitting sitting)
    {
        Open();
        inForce = FindingsOf(sitting);
        var advice = AdviceJudge.Judge(policy, inForce);
        if (urgent is not null && highest > advice.Level)
        {
            inForce = urgent with { IsUnsettled = inForce.IsUnsettled, LaterSpo2Percent = inForce.Spo2?.Percent };
            advice = AdviceJudge.Judge(policy, inForce);
        }

        Remember(sitting);
        (highest, urgent, isOpen, isAnswerOld) = (AdviceLevel.Usual, null, false, true);
        return advice with { SecondIndex = sitting.ToSecond };
    }

    /// <summary>
    /// Takes an answer and judges again what the advice in force was given on. The answer holds for the sitting that is
    /// open, else for the last one and the next: one given before a sitting ended lapses with the first reading of the
    /// next, when the person is asked again. An answer may take back what an earlier answer led to, never what a number did.
    /// </summary>
    /// <param name="feeling">How the person feels; <see cref="Feeling.NotAsked"/> where the question is open again.</param>
    /// <returns>The advice; null where nothing has been measured and the answer alone is not urgent.</returns>
    public Advice? Answer(Feeling feeling)
    {
        circumstances = circumstances with { Feeling = feeling };
        isAnswerOld = false;
        urgent = urgent is null ? null : urgent with { Circumstances = circumstances };
        inForce = inForce is null ? null : inForce with { Circumstances = circumstances };
        var findings = inForce ?? new Findings { Circumstances = circumstances };
        var advice = AdviceJudge.Judge(policy, findings);
        if (inForce is null && advice.Level < AdviceLevel.DoctorNow)
        {
            return null;
        }

        if (isOpen)
        {
            highest = advice.Level;
            urgent = highest >= AdviceLevel.DoctorNow ? findings : null;
        }

        return advice;
    }

    private void Open()
    {
        if (!isOpen && isAnswerOld)
        {
            circumstances = told;
            isAnswerOld = false;
        }

        isOpen = true;
    }

    private static Reading? JudgedReading(Sitting sitting) => sitting.Outcome switch
    {
        SittingOutcome.Accepted => sitting.RecordReading,
        SittingOutcome.Unsettled => sitting.LowestReading,
        _ => null,
    };

    private Findings FindingsOf(Reading reading, long nowSecond) => new()
    {
        Spo2 = reading.Spo2,
        PulseRatePerMinute = reading.PulseRatePerMinute,
        Circumstances = circumstances,
        Earlier = EarlierAt(nowSecond),
    };

    private Findings FindingsOf(Sitting sitting)
    {
        if (JudgedReading(sitting) is not { } reading)
        {
            return new Findings { PulseRatePerMinute = sitting.MedianPulseRatePerMinute, Circumstances = circumstances };
        }

        return FindingsOf(reading, reading.SecondIndex) with
        {
            IsUnsettled = sitting.Outcome == SittingOutcome.Unsettled,
            LowestSpo2Percent = sitting.LowestReading?.Spo2.Percent,
        };
    }

    private EarlierReading[] EarlierAt(long second) =>
    [
        .. history.Select(earlier => new EarlierReading(earlier.Spo2Percent, earlier.MinutesBefore + (second / SecondsPerMinute))),
        .. sittings.Select(earlier => new EarlierReading(earlier.Spo2Percent, (second - earlier.SecondIndex) / SecondsPerMinute)),
    ];

    private void Remember(Sitting sitting)
    {
        if (JudgedReading(sitting) is { } reading)
        {
            sittings.Add((reading.Spo2.Percent, reading.SecondIndex));
        }
    }
}
