namespace PulseStream.Triage.Policies;

/// <summary>What a policy says of the saturations in [FromPercent, ToPercent); the highest band includes 100.</summary>
/// <param name="FromPercent">Lowest SpO2 of the band, percent.</param>
/// <param name="ToPercent">Where the next band begins, percent.</param>
/// <param name="WhenWell">Level for a person who feels well.</param>
/// <param name="WhenNotAsked">Level where nobody asked.</param>
/// <param name="WhenPoorly">Level for a person who feels poorly or worse.</param>
/// <param name="RecheckAfterMinutes">Minutes to the next check; there exactly where one of the levels is <see cref="AdviceLevel.Recheck"/>.</param>
/// <param name="SecondValue">What another value in this band means; null where nothing.</param>
public sealed record PolicyBand(
    double FromPercent,
    double ToPercent,
    AdviceLevel WhenWell,
    AdviceLevel WhenNotAsked,
    AdviceLevel WhenPoorly,
    int? RecheckAfterMinutes,
    SecondValueRule? SecondValue)
{
    /// <summary>The level for a feeling; breathless and severe count as poorly here, the symptom rules add the rest.</summary>
    /// <param name="feeling">How the person feels.</param>
    public AdviceLevel LevelFor(Feeling feeling) => feeling switch
    {
        Feeling.Well => WhenWell,
        Feeling.NotAsked => WhenNotAsked,
        _ => WhenPoorly,
    };
}
