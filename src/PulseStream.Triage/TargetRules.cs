using PulseStream.Triage.Policies;

namespace PulseStream.Triage;

/// <summary>The rules about a personal target range, which replace the bands.</summary>
internal static class TargetRules
{
    public static IEnumerable<FiredRule> Fire(TargetLevels levels, TargetRange target, bool onOxygen, double percent)
    {
        // The emergency outlives any range: a range that reaches so low belongs to care with a clinician at hand.
        if (percent < levels.EmergencyBelowPercent)
        {
            yield return new FiredRule(AdviceLevel.Emergency, $"SpO2 {Shown.Spo2(percent)} % lies under {levels.EmergencyBelowPercent}, whatever the target: emergency");
        }

        var (level, where, said) = Place(levels, target, onOxygen, percent);
        yield return new FiredRule(level, $"Target {target.LowPercent} to {target.HighPercent} %, {Shown.Spo2(percent)} % lies {where}: {AdviceLevelName.Of(level)}") { Said = said };
    }

    private static (AdviceLevel Level, string Where, string Said) Place(TargetLevels levels, TargetRange target, bool onOxygen, double percent)
    {
        if (percent <= target.LowPercent - levels.FarBelowPoints)
        {
            return (levels.FarBelow, $"{levels.FarBelowPoints} points or more below", AdviceText.BelowTarget);
        }

        if (percent < target.LowPercent)
        {
            return (levels.Below, "below", AdviceText.BelowTarget);
        }

        if (percent <= target.HighPercent)
        {
            return (levels.Inside, "inside", AdviceText.InsideTarget);
        }

        return onOxygen ? (levels.AboveOnOxygen, "above, on oxygen", AdviceText.AboveTarget) : (levels.Above, "above", AdviceText.AboveTarget);
    }
}
