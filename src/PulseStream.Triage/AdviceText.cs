using PulseStream.Triage.Policies;

namespace PulseStream.Triage;

/// <summary>Every word that an advice says to a person: the action first, the numbers, what else spoke, the cautions last.</summary>
internal static class AdviceText
{
    public const string SecondValue = "It is the second such value within hours.";
    public const string NearBorder = "The true value may be worse.";
    public const string Unsettled = "The values did not agree, or the measurement was too short.";
    public const string NoReading = "No reading could be accepted.";
    public const string Held = "A later, higher value does not change this advice.";
    public const string BelowTarget = "Oxygen is below the range set for you.";
    public const string InsideTarget = "Oxygen is inside the range set for you.";
    public const string AboveTarget = "Oxygen is above the range set for you.";
    private const string Prepare = "sit down, rest five minutes, warm the hand and keep it still";

    public static string Lowest(double percent) => $"A lower value, {Shown.Spo2(percent)} percent, was accepted too.";

    public static string Accuracy(double armsPercent) => $"This device can be {DeviceAccuracy.HalfWidth(armsPercent):0.0} points off; that is allowed for.";

    public static string UnusualPulse(PulseLimits limits) => $"The pulse is outside the usual {limits.UsualFrom} to {limits.UsualTo}.";

    public static string Compose(TriagePolicy policy, Findings findings, AdviceLevel level, int? recheckAfterMinutes, bool repeatNow, IEnumerable<string?> said)
    {
        IEnumerable<string?> sentences =
        [
            Action(level, recheckAfterMinutes, repeatNow),
            Numbers(findings),
            .. said,
            repeatNow ? RepeatAfterCall(level) : null,
            Person(findings.Circumstances, level),
            Oxygen(findings.Circumstances, level),
            Cautions(findings.Circumstances.Feeling, level),
            $"Policy followed: {policy.Name}.",
        ];
        return string.Join(' ', sentences.Where(sentence => sentence is not null));
    }

    // Urgent words are few: someone may have to read them to another, or hear them on the telephone.
    private static bool IsUrgent(AdviceLevel level) => level >= AdviceLevel.DoctorNow;

    private static string Action(AdviceLevel level, int? recheckAfterMinutes, bool repeatNow) => level switch
    {
        AdviceLevel.Emergency => "Ring your local emergency number now. Sit upright. Do not stay alone.",
        AdviceLevel.DoctorNow => "Call a doctor now. If no doctor answers at once, ring your local emergency number. Sit upright.",
        AdviceLevel.Call => "Call your doctor or clinic today and tell them these numbers.",
        AdviceLevel.Recheck when recheckAfterMinutes is null or 0 => $"Measure again now: {Prepare}.",
        AdviceLevel.Recheck when repeatNow => $"Measure again now: {Prepare}. Then once more in {Shown.Minutes(recheckAfterMinutes.Value)}.",
        AdviceLevel.Recheck => $"Measure again in {Shown.Minutes(recheckAfterMinutes.Value)}. Before that, {Prepare}.",
        _ when repeatNow => $"Measure again now, to be sure: {Prepare}.",
        _ => "These numbers ask for nothing now.",
    };

    private static string? Numbers(Findings findings) => (findings.Spo2, findings.PulseRatePerMinute) switch
    {
        ({ } spo2, { } pulse) => $"Oxygen {Shown.Spo2(spo2.Percent)} percent, pulse {Shown.Rate(pulse)}.",
        ({ } spo2, null) => $"Oxygen {Shown.Spo2(spo2.Percent)} percent.",
        (null, { } pulse) => $"Pulse {Shown.Rate(pulse)}. This speaks of the pulse alone: oxygen was not measured.",
        _ => null,
    };

    // Below a call the repeat is the action itself.
    private static string? RepeatAfterCall(AdviceLevel level) => level switch
    {
        >= AdviceLevel.DoctorNow => "Call first, then measure again.",
        AdviceLevel.Call => $"Measure again now: {Prepare}.",
        _ => null,
    };

    private static string? Person(Circumstances circumstances, AdviceLevel level) => circumstances.Feeling switch
    {
        Feeling.NotAsked when IsUrgent(level) => "How do you feel? Tell them.",
        Feeling.NotAsked => "How do you feel? With fever, breathless on effort or worse than yesterday, this is more urgent.",
        Feeling.Poorly when level <= AdviceLevel.Recheck => "You feel poorly: if it gets worse, call a doctor whatever the number.",
        _ => null,
    };

    private static string? Oxygen(Circumstances circumstances, AdviceLevel level) => circumstances is { OnOxygen: true, Target: null } && !IsUrgent(level)
        ? "You are on oxygen: ask your doctor which range is right for you."
        : null;

    private static string Cautions(Feeling feeling, AdviceLevel level)
    {
        const string clinician = "Children, pregnancy, dark skin tone and carbon monoxide need a clinician's eye.";
        const string plain = "No medical device, no diagnosis.";
        const string doubt = "A good number does not rule illness out.";
        const string first = "Hard to breathe at rest: a doctor now. Confused, blue, chest pain or cannot be woken: the local emergency number first.";
        return (IsUrgent(level), feeling >= Feeling.Breathless) switch
        {
            (true, true) => $"{doubt} {clinician} {plain}",
            (true, false) => $"{clinician} {plain}",
            _ => $"{doubt} {clinician} {first} {plain}",
        };
    }
}
