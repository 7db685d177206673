namespace PulseStream.Triage;

/// <summary>What to do now, and why.</summary>
/// <param name="Level">How urgent it is: that of the most severe rule that fired.</param>
/// <param name="Text">Plain words for the person: the action first, the cautions last.</param>
/// <param name="RecheckAfterMinutes">Minutes to the next planned check, 0 for at once; null unless the level is <see cref="AdviceLevel.Recheck"/>.</param>
/// <param name="RepeatNow">Whether the text also asks for a repeat now: the value is unsettled, or near a more severe band.</param>
/// <param name="Because">Every rule that fired. The first word of each is stable: SpO2, Second-value, Target, Interval, Lowest, Feeling, Pulse, No-reading, Unsettled, Held.</param>
/// <param name="PolicyName">The policy that was followed.</param>
/// <param name="SecondIndex">The second of the session that it follows; null outside a session.</param>
public sealed record Advice(
    AdviceLevel Level,
    string Text,
    int? RecheckAfterMinutes,
    bool RepeatNow,
    IReadOnlyList<string> Because,
    string PolicyName,
    long? SecondIndex = null);
