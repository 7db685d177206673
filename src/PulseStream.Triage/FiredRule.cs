namespace PulseStream.Triage;

/// <summary>One rule that fired.</summary>
/// <param name="Level">The level that it asks for; <see cref="AdviceLevel.Usual"/> where it only has something to say.</param>
/// <param name="Because">Why, as it is listed.</param>
internal sealed record FiredRule(AdviceLevel Level, string Because)
{
    /// <summary>Minutes to the next check where the level is <see cref="AdviceLevel.Recheck"/>.</summary>
    public int? RecheckAfterMinutes { get; init; }

    /// <summary>Whether a repeat is asked for now.</summary>
    public bool AsksRepeatNow { get; init; }

    /// <summary>A sentence for the person; null where the rule has none.</summary>
    public string? Said { get; init; }
}
