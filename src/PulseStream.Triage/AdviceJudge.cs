using PulseStream.Triage.Policies;

namespace PulseStream.Triage;

/// <summary>Judges findings by a policy: a pure function, the most severe rule wins, every rule that fired is listed.</summary>
public static class AdviceJudge
{
    /// <summary>Judges findings.</summary>
    /// <param name="policy">The policy to follow.</param>
    /// <param name="findings">What was found.</param>
    public static Advice Judge(TriagePolicy policy, Findings findings)
    {
        FiredRule[] fired = [.. NumberRules(policy, findings), .. FeelingRules(policy, findings), .. SittingRules(findings)];
        var level = fired.Max(rule => rule.Level);
        var minutes = level == AdviceLevel.Recheck ? fired.Where(rule => rule.Level == level).Min(rule => rule.RecheckAfterMinutes) : null;
        var repeatNow = fired.Any(rule => rule.AsksRepeatNow);
        var text = AdviceText.Compose(policy, findings, level, minutes, repeatNow, fired.Select(rule => rule.Said));
        return new Advice(level, text, minutes, repeatNow, [.. fired.Select(rule => rule.Because)], policy.Name);
    }

    private static IEnumerable<FiredRule> NumberRules(TriagePolicy policy, Findings findings) => (findings.Spo2, findings.PulseRatePerMinute) switch
    {
        ({ } spo2, { } pulse) => [.. SaturationRules.Fire(policy, findings, spo2), .. PulseRule(policy.Pulse, pulse, isAlone: false)],
        ({ } spo2, null) => SaturationRules.Fire(policy, findings, spo2),
        (null, { } pulse) => PulseRule(policy.Pulse, pulse, isAlone: true),
        _ => NoReadingRule(policy.NoReading),
    };

    private static IEnumerable<FiredRule> PulseRule(PulseLimits limits, double pulse, bool isAlone)
    {
        var shown = $"Pulse {Shown.Rate(pulse)} /min";
        var said = AdviceText.UnusualPulse(limits);
        if (pulse < limits.LimitFrom || pulse > limits.LimitTo)
        {
            yield return new FiredRule(limits.OutsideLimits, $"{shown} lies outside {limits.LimitFrom} to {limits.LimitTo}: {AdviceLevelName.Of(limits.OutsideLimits)}") { Said = said };
        }
        else if (pulse < limits.UsualFrom || pulse > limits.UsualTo)
        {
            yield return new FiredRule(AdviceLevel.Usual, $"{shown} lies outside {limits.UsualFrom} to {limits.UsualTo}: said") { Said = said };
        }
        else if (isAlone)
        {
            yield return new FiredRule(AdviceLevel.Usual, $"{shown} lies in {limits.UsualFrom} to {limits.UsualTo}, no SpO2: usual");
        }
    }

    private static IEnumerable<FiredRule> NoReadingRule(NoReadingRule rule)
    {
        yield return new FiredRule(rule.Level, $"No-reading could be accepted: {AdviceLevelName.Of(rule.Level)}")
        {
            RecheckAfterMinutes = rule.RecheckAfterMinutes,
            AsksRepeatNow = true,
            Said = AdviceText.NoReading,
        };
    }

    private static IEnumerable<FiredRule> FeelingRules(TriagePolicy policy, Findings findings)
    {
        switch (findings.Circumstances.Feeling)
        {
            case Feeling.Breathless:
                yield return new FiredRule(policy.Symptoms.Breathless, $"Feeling breathless at rest: {AdviceLevelName.Of(policy.Symptoms.Breathless)}");
                break;
            case Feeling.Severe:
                yield return new FiredRule(policy.Symptoms.Severe, $"Feeling severe: {AdviceLevelName.Of(policy.Symptoms.Severe)}");
                break;
            case Feeling.Poorly when findings.Spo2 is null && findings.Circumstances.Target is null:
                // No number cannot be better news than the best one.
                var best = policy.Bands[0];
                yield return new FiredRule(best.WhenPoorly, $"Feeling poorly, no SpO2: {AdviceLevelName.Of(best.WhenPoorly)}")
                {
                    RecheckAfterMinutes = best.WhenPoorly == AdviceLevel.Recheck ? best.RecheckAfterMinutes : null,
                };
                break;

            // The bands have judged these two; who reads the advice later has to know that somebody asked.
            case Feeling.Poorly:
                yield return new FiredRule(AdviceLevel.Usual, "Feeling poorly: said");
                break;
            case Feeling.Well:
                yield return new FiredRule(AdviceLevel.Usual, "Feeling well: said");
                break;
            default:
                break;
        }
    }

    private static IEnumerable<FiredRule> SittingRules(Findings findings)
    {
        if (findings.IsUnsettled)
        {
            yield return new FiredRule(AdviceLevel.Usual, "Unsettled sitting, its lowest value is judged: repeat now") { AsksRepeatNow = true, Said = AdviceText.Unsettled };
        }

        if (findings.LaterSpo2Percent is { } later)
        {
            yield return new FiredRule(AdviceLevel.Usual, $"Held in this sitting, a later value of {Shown.Spo2(later)} % does not take it back") { Said = AdviceText.Held };
        }
    }
}
