using PulseStream.Readings;
using PulseStream.Sessions;
using Xunit;

namespace PulseStream.Tests.Sessions;

public sealed class CoachingLineTests
{
    private static readonly Reasons[] Refusals =
        [.. Enum.GetValues<Reasons>().Where(reason => reason is not (Reasons.None or Reasons.Irregular))];

    [Fact]
    public void EveryReasonHasItsOwnSentence()
    {
        var sentences = Refusals.Select(Refused).ToList();

        Assert.Equal(sentences.Count, sentences.Distinct(StringComparer.Ordinal).Count());
        Assert.All(sentences, sentence => Assert.EndsWith(".", sentence, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Reasons.NoFinger | Reasons.Saturated, Reasons.NoFinger)]
    [InlineData(Reasons.LowPerfusion | Reasons.Settling, Reasons.LowPerfusion)]
    [InlineData(Reasons.Motion | Reasons.Misplaced, Reasons.Motion)]
    public void OfSeveralReasonsTheOneToMendFirstSpeaks(Reasons several, Reasons first) => Assert.Equal(Refused(first), Refused(several));

    [Fact]
    public void WhatIsALampOrMovementIsMendedBothWays()
    {
        var sentence = Refused(Reasons.AmbientLight | Reasons.Motion);

        Assert.Contains("Rest the hand", sentence, StringComparison.Ordinal);
        Assert.Contains("shade the clip", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsALampOrAFingerHalfOffIsMendedBothWays()
    {
        var sentence = Refused(Reasons.AmbientLight | Reasons.Misplaced);

        Assert.Contains("Seat the finger", sentence, StringComparison.Ordinal);
        Assert.Contains("shade the clip", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void AUsableSecondWarnsOrEncourages()
    {
        var usable = new UsableSecond(7, new(97, 96, 98), 70, 2, Reasons.None);

        Assert.Contains("Keep still", CoachingLine.Of(usable, isHeld: false), StringComparison.Ordinal);
        Assert.Contains("holds", CoachingLine.Of(usable, isHeld: true), StringComparison.Ordinal);
        Assert.Contains("irregular", CoachingLine.Of(usable with { Warnings = Reasons.Irregular }, isHeld: true), StringComparison.Ordinal);
    }

    private static string Refused(Reasons reasons) => CoachingLine.Of(new UnusableSecond(7, reasons, null), isHeld: false);
}
