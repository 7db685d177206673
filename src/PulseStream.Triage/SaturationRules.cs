using PulseStream.Readings;
using PulseStream.Triage.Policies;

namespace PulseStream.Triage;

/// <summary>The rules about SpO2: band or personal target, a second value, and how near something more severe is.</summary>
internal static class SaturationRules
{
    public static IEnumerable<FiredRule> Fire(TriagePolicy policy, Findings findings, Saturation spo2)
    {
        var own = LevelRules(policy, findings, spo2.Percent).ToArray();
        var level = own.Max(rule => rule.Level);
        return [.. own, .. IntervalRules(policy, findings, spo2, level), .. LowestRule(policy, findings, spo2, level)];
    }

    private static IEnumerable<FiredRule> LevelRules(TriagePolicy policy, Findings findings, double percent)
    {
        var circumstances = findings.Circumstances;
        return circumstances.Target is { } target
            ? TargetRules.Fire(policy.Target, target, circumstances.OnOxygen, percent)
            : BandRules(policy.BandOf(percent), findings, percent);
    }

    private static IEnumerable<FiredRule> BandRules(PolicyBand band, Findings findings, double percent)
    {
        var feeling = findings.Circumstances.Feeling;
        var level = band.LevelFor(feeling);
        var range = band.ToPercent == 100 ? $"[{band.FromPercent}, 100]" : $"[{band.FromPercent}, {band.ToPercent})";
        yield return new FiredRule(level, $"SpO2 {Shown.Spo2(percent)} % lies in {range}, {Shown.Of(feeling)}: {AdviceLevelName.Of(level)}")
        {
            RecheckAfterMinutes = level == AdviceLevel.Recheck ? band.RecheckAfterMinutes : null,
        };
        if (band.SecondValue is { } second && FirstOf(second, band, findings) is { } first)
        {
            yield return new FiredRule(second.Level, $"Second-value in {range}, {Shown.Spo2(first.Spo2Percent)} % was found {first.MinutesBefore:0} minutes before: {AdviceLevelName.Of(second.Level)}")
            {
                Said = AdviceText.SecondValue,
            };
        }
    }

    // Any earlier value counts, not the last alone: three checks twenty minutes apart must not escape the rule.
    private static EarlierReading? FirstOf(SecondValueRule second, PolicyBand band, Findings findings) => findings.Earlier
        .Where(earlier => earlier.Spo2Percent >= band.FromPercent && (earlier.Spo2Percent < band.ToPercent || band.ToPercent == 100))
        .Where(earlier => earlier.MinutesBefore >= second.FromMinutes && earlier.MinutesBefore <= second.ToMinutes)
        .MaxBy(earlier => (earlier.MinutesBefore, earlier.Spo2Percent));

    private static IEnumerable<FiredRule> IntervalRules(TriagePolicy policy, Findings findings, Saturation spo2, AdviceLevel level)
    {
        var arms = findings.Circumstances.DeviceArmsPercent ?? 0;
        var widened = DeviceAccuracy.Widen(spo2, arms);
        var ends = $"Interval {Shown.Spo2(widened.LowPercent)} to {Shown.Spo2(widened.HighPercent)} %";
        if (arms > 0)
        {
            yield return new FiredRule(AdviceLevel.Usual, $"{ends}, widened by the device's accuracy of {arms:0.##} points in quadrature") { Said = AdviceText.Accuracy(arms) };
        }

        // Urgency only rises away from the best value on either side, so the ends are the worst of the interval.
        var reached = MoreUrgent(LevelAt(policy, findings, widened.LowPercent), LevelAt(policy, findings, widened.HighPercent));
        if (reached > level)
        {
            yield return new FiredRule(AdviceLevel.Usual, $"{ends} reaches {AdviceLevelName.Of(reached)}: repeat now") { AsksRepeatNow = true, Said = AdviceText.NearBorder };
        }
    }

    private static IEnumerable<FiredRule> LowestRule(TriagePolicy policy, Findings findings, Saturation spo2, AdviceLevel level)
    {
        if (findings.LowestSpo2Percent is { } lowest && lowest < spo2.Percent && LevelAt(policy, findings, lowest) is var reached && reached > level)
        {
            yield return new FiredRule(AdviceLevel.Usual, $"Lowest accepted value {Shown.Spo2(lowest)} % reaches {AdviceLevelName.Of(reached)}: repeat now")
            {
                AsksRepeatNow = true,
                Said = AdviceText.Lowest(lowest),
            };
        }
    }

    private static AdviceLevel LevelAt(TriagePolicy policy, Findings findings, double percent) => LevelRules(policy, findings, percent).Max(rule => rule.Level);

    private static AdviceLevel MoreUrgent(AdviceLevel a, AdviceLevel b) => a > b ? a : b;
}
