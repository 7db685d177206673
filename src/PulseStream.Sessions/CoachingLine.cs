using PulseStream.Readings;

namespace PulseStream.Sessions;

/// <summary>The one sentence that helps: what to do about a refused second, what to know about a usable one.</summary>
public static class CoachingLine
{
    // In the order in which mending one makes the next worth mending: without samples or finger nothing else matters.
    private static readonly (Reasons Reason, string Sentence)[] Refusals =
    [
        (Reasons.MissingSamples, "The signal has gaps: check cable and plug."),
        (Reasons.NoFinger, "Put a finger into the clip, all the way in."),
        (Reasons.Saturated, "Too much light comes through: seat the finger deeper in the clip."),
        (Reasons.AmbientLight | Reasons.Motion, "Rest the hand and keep it still, and shade the clip."),
        (Reasons.AmbientLight | Reasons.Misplaced, "Seat the finger again, all the way in, and shade the clip."),
        (Reasons.AmbientLight, "Shade the clip with a cloth or the other hand."),
        (Reasons.Motion, "Rest the hand on something and keep it still."),
        (Reasons.Misplaced, "Seat the finger again: all the way in, straight and loose."),
        (Reasons.NoPulse, "No pulse is seen here. Look at the person first, then try another finger."),
        (Reasons.LowPerfusion, "Warm the hand, then try again."),
        (Reasons.OutOfRange, "This signal does not fit the sensor: try another finger."),
        (Reasons.Settling, "Stay as you are: the signal is settling."),
    ];

    private static readonly (Reasons Reason, string Sentence)[] Warnings =
    [
        (Reasons.Irregular, "The rhythm is irregular. Keep still."),
        (Reasons.LowPerfusion, "The pulse is weak: a warm hand makes it surer."),
    ];

    /// <summary>The sentence for a second.</summary>
    /// <param name="second">The second.</param>
    /// <param name="isHeld">Whether its value has been held for long enough to be a reading.</param>
    public static string Of(Second second, bool isHeld) => second switch
    {
        { Unusable: { } refused } => Find(Refusals, refused.Reasons) ?? "This second cannot be used. Keep still.",
        { Usable: { } usable } => Find(Warnings, usable.Warnings) ?? (isHeld ? "Steady. The reading holds." : "Good signal. Keep still."),
        _ => "",
    };

    private static string? Find((Reasons Reason, string Sentence)[] sentences, Reasons reasons) =>
        sentences.FirstOrDefault(one => reasons.HasFlag(one.Reason)).Sentence;
}
