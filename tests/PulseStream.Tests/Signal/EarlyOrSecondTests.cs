using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Weaker fronts that nobody can call second waves, though they may be.</summary>
public sealed class EarlyOrSecondTests
{
    // An early beat behind each full one, three quarters of the usual 0.48 s after it, on a vessel that has half emptied by then and
    // draws the fronts out to an eighth of the period.
    private static readonly RisePairs SlowVessel = new(0.96, 0.36, 0.51, 0.58, 0.122, 0.102, 0.05, 30);

    [Fact]
    public void AsShortAndHalfAsSteepMayBeABeat() => Assert.True(EarlyOrSecond.AreAsLikelyBeats(SlowVessel));

    // Waves broaden on their way (dispersion and reflection at many places: Nichols, O'Rourke, McDonald's Blood Flow in Arteries).
    [Fact]
    public void WhatIsBroaderIsASecondWave() => Assert.False(EarlyOrSecond.AreAsLikelyBeats(SlowVessel with { SecondFrontSeconds = 0.125 }));

    // The two bells of Tang (Sci Rep 2020;10:13883): the second 2.0 widths of the front behind it.
    [Fact]
    public void WhatFollowsBeforeAHeartCanFillIsASecondWave() => Assert.False(EarlyOrSecond.AreAsLikelyBeats(SlowVessel with { FrontSeconds = 0.16, SecondFrontSeconds = 0.14 }));

    // At 150 beats a minute hardly every second one comes early.
    [Fact]
    public void SoFastNoneIsEarly() => Assert.False(EarlyOrSecond.AreAsLikelyBeats(new(0.8, 0.3, 0.51, 0.58, 0.1, 0.085, 0.05, 30)));

    // A vessel that empties at once draws nothing out: a front of an eighth of the period is that of one slow beat.
    [Fact]
    public void ALongFrontOfAQuickVesselIsThatOfOneBeat() => Assert.False(EarlyOrSecond.AreAsLikelyBeats(SlowVessel with { FootShare = 0.2 }));

    // No second wave is nearly as steep as its beat and as short.
    [Fact]
    public void NearlyAsSteepMayBeABeatFromWhereverItRises() => Assert.True(EarlyOrSecond.AreAsLikelyBeats(SlowVessel with { SlopeShare = 0.8, FootShare = 0.2 }));

    // Weak, but narrow although it rises from the middle of the beat before, or narrower from wherever it rises.
    [Theory]
    [InlineData(0.6, 0.09, true)]
    [InlineData(0.6, 0.11, false)]
    [InlineData(0.7, 0.11, true)]
    [InlineData(0.4, 0.09, true)]
    [InlineData(0.4, 0.11, false)]
    [InlineData(0.9, 0.11, false)]
    public void ANarrowFrontHighOnTheFlankHasNotCrossedTheVessel(double foot, double secondSeconds, bool mayBe) =>
        Assert.Equal(mayBe, EarlyOrSecond.AreAsLikelyBeats(SlowVessel with { SlopeShare = 0.23, FootShare = foot, SecondFrontSeconds = secondSeconds }));

    // The dicrotic waves of fingers at 46 and at 64 a minute in Hoffman et al., npj Digital Medicine 2022;5:146: steepness below a sixth.
    [Theory]
    [InlineData(1.3, 0.333, 0.14, 0.83, 0.109, 0.075)]
    [InlineData(0.94, 0.3, 0.15, 1, 0.098, 0.095)]
    public void TheSecondWavesOfFingersAreNone(double period, double delay, double slope, double foot, double front, double second) =>
        Assert.False(EarlyOrSecond.AreAsLikelyBeats(new(period, delay, slope, foot, front, second, 0.1, 60)));

    // Bells of one width, the second 0.64 of the usual 0.66 s behind the first and two thirds as tall, on a vessel that has emptied by then: the
    // fall of the first narrows the rise of the second. A wave that has travelled is drawn out; one that is half as short was never a beat's, and
    // a front that takes more than an eighth of the time is that of one beat.
    [Theory]
    [InlineData(0.42, 0.118, 0.104, 0.2, true)]
    [InlineData(0.42, 0.118, 0.117, 0.2, false)]
    [InlineData(0.42, 0.118, 0.06, 0.2, false)]
    [InlineData(0.42, 0.14, 0.12, 0.2, false)]
    [InlineData(0.29, 0.118, 0.104, 0.2, false)]
    [InlineData(0.25, 0.09, 0.08, 0.2, false)]
    [InlineData(0.42, 0.118, 0.104, 0.4, false)]
    [InlineData(0.28, 0.1, 0.075, 0.7, true)]
    [InlineData(0.28, 0.1, 0.09, 0.7, false)]
    [InlineData(0.28, 0.1, 0.08, 0.8, false)]
    [InlineData(0.47, 0.118, 0.102, 0.6, true)]
    [InlineData(0.47, 0.118, 0.106, 0.6, false)]
    [InlineData(0.44, 0.118, 0.102, 0.6, false)]
    [InlineData(0.47, 0.155, 0.134, 0.6, false)]
    public void ANarrowerFrontFarBehindALongOneMayBeABeat(double delay, double front, double second, double foot, bool mayBe) =>
        Assert.Equal(mayBe, EarlyOrSecond.AreAsLikelyBeats(new(1.09, delay, 0.4, foot, front, second, 0.08, 30)));

    // Those of fingers in open recordings (Hoffman et al.) reach up to 0.17 where they are no broader.
    [Theory]
    [InlineData(0.15, false)]
    [InlineData(0.2, true)]
    public void ANarrowFrontThatIsHardlySteepIsASecondWave(double slope, bool mayBe) =>
        Assert.Equal(mayBe, EarlyOrSecond.AreAsLikelyBeats(new(1.3, 0.4, slope, 0.6, 0.11, 0.08, 0.08, 30)));

    [Fact]
    public void ANarrowFrontThatKeepsToItsDelayWithoutARhythmIsASecondWave() =>
        Assert.False(EarlyOrSecond.AreAsLikelyBeatsWithoutRhythm(new(1.09, 0.42, 0.4, 0.2, 0.118, 0.104, 0.08, 30)));

    // Half an interval behind the beat before, with a pause that makes good for it: a quarter of the pair. Nothing of that beat is left.
    [Theory]
    [InlineData(0.25, true)]
    [InlineData(0.23, false)]
    public void ABeatMayComeAtHalfOfAnInterval(double delayShare, bool mayBe) =>
        Assert.Equal(mayBe, EarlyOrSecond.AreAsLikelyBeats(new(1.6, delayShare * 1.6, 0.57, 0.02, 0.08, 0.081, 0.03, 25)));

    // From the foot, behind a front that takes a sixteenth of the time: nothing of the beat before is left.
    [Theory]
    [InlineData(0.075, 0, true)]
    [InlineData(0.095, 0.2, false)]
    public void WhatRisesFromTheFootMayBeABeatThoughItIsBroader(double front, double foot, bool mayBe) =>
        Assert.Equal(mayBe, EarlyOrSecond.AreAsLikelyBeats(new(1.2, 0.55, 0.45, foot, front, 1.18 * front, 0.05, 30)));

    // Seven widths of the front behind it nothing of its beat is left to come.
    [Fact]
    public void WhatComesFarBehindAQuickFrontMayBeABeat() => Assert.True(EarlyOrSecond.AreAsLikelyBeats(new(1, 0.55, 0.25, 0.16, 0.0775, 0.073, 0.15, 30)));

    // Four beats in the time of five (Wenckebach periods, 4:3: common practice): the second and the fourth two thirds as steep as the
    // first and the third. Second waves of a slower heart are less steep, come sooner or rise from higher.
    [Theory]
    [InlineData(1, 0.42, 0.67, 0.08, true)]
    [InlineData(0.7, 0.29, 0.67, 0.08, false)]
    [InlineData(1.3, 0.45, 0.67, 0.08, false)]
    [InlineData(0.85, 0.34, 0.67, 0.08, false)]
    [InlineData(1, 0.42, 0.47, 0.08, false)]
    [InlineData(1, 0.42, 0.67, 0.4, false)]
    public void EverySecondBeatOfGroupsKeepsToTheOneBefore(double period, double delay, double slope, double foot, bool mayBe)
    {
        var pairs = new RisePairs(period, delay, slope, foot, 0.11, 0.11, 0.06, double.PositiveInfinity);
        Assert.Equal(mayBe, EarlyOrSecond.AreOfGroups(pairs));
        Assert.False(EarlyOrSecond.AreOfGroups(pairs with { SecondFrontSeconds = 0.15 }));
    }
}
