using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What fronts that come in pairs are, by what all pairs of a window have in common.</summary>
public sealed class PairVerdictTests
{
    // A pair of bigeminy at 92 a minute: a third of the period apart, the early front as short as the full one.
    private static readonly RisePairs Bigeminy = new(1.3, 0.42, 0.45, 0.4, 0.085, 0.075, 0.05, 30);

    private static readonly RisePairs Late = Bigeminy with { DelaySeconds = 0.45 };

    // Two waves of one beat of 70 a minute.
    private static readonly RisePairs Dicrotic = new(0.86, 0.33, 0.5, 0.3, 0.1, 0.1, 0.03, 30);

    // Up to 0.435 s behind this front second waves come back, by Weissler's regression and a tenth of a second for the way.
    [Fact]
    public void AFrontAsShortAsTheFullOneIsABeatOnceAllWavesAreBack()
    {
        Assert.Equal(PairKind.EarlyBeat, PairVerdict.Of(Late));
        Assert.Equal(PairKind.Either, PairVerdict.Of(Bigeminy));
        Assert.Equal(PairKind.EarlyBeat, PairVerdict.Of(Bigeminy with { SlopeShare = 0.8 }));
    }

    [Fact]
    public void AFrontThatRisesFromTheFootIsABeatThoughItIsBroader() =>
        Assert.Equal(PairKind.EarlyBeat, PairVerdict.Of(Late with { SecondFrontSeconds = 0.11, FootShare = 0.02 }));

    // Two bells, 0.38 of 1.5 s apart, the second a quarter broader: of 40 beats a minute as well as of 80.
    [Theory]
    [InlineData(0.13, "Either")]
    [InlineData(0.09, "EarlyBeat")]
    public void ABroaderFrontBehindALongOneMayBeASecondWaveThoughItRisesFromTheFoot(double front, string kind) =>
        Assert.Equal(kind, PairVerdict.Of(new(1.5, 0.57, 0.69, 0.01, front, 1.25 * front, 0.05, 15)).ToString());

    // Waves broaden on their way (dispersion and reflection at many places: Nichols, O'Rourke, McDonald's Blood Flow in Arteries).
    [Fact]
    public void ABroaderFrontIsASecondWave() =>
        Assert.Equal(PairKind.SecondWave, PairVerdict.Of(Bigeminy with { SecondFrontSeconds = 0.12 }));

    // Every second beat early, by ejections of half a sine into a vessel that empties by itself (windkessel: Frank 1899): the early one
    // fills a vessel that is still half full and is an eighth broader. Second waves so late and so low are hardly a quarter as steep.
    [Theory]
    [InlineData(0.48, 0.26, 0.104, "EarlyBeat")]
    [InlineData(0.28, 0.26, 0.104, "SecondWave")]
    [InlineData(0.48, 0.4, 0.104, "SecondWave")]
    [InlineData(0.48, 0.26, 0.115, "SecondWave")]
    public void ABroaderFrontBehindAllWavesOfAQuickOneIsABeat(double slope, double foot, double front, string kind)
    {
        var pairs = new RisePairs(1.375, 0.547, slope, foot, front, 1.13 * front, 0.05, 35);
        Assert.Equal(kind, PairVerdict.Of(pairs).ToString());
        Assert.Equal(PairKind.SecondWave, PairVerdict.Of(pairs with { DelaySeconds = 0.42 }));
    }

    [Fact]
    public void WhatIsNeitherIsNotTold() => Assert.Equal(PairKind.Either, PairVerdict.Of(Bigeminy with { SecondFrontSeconds = 0.087 }));

    // A gamma-shaped throw of 43 beats a minute with a second, narrower one behind it; or every second beat of 85 early.
    [Theory]
    [InlineData(0.49, 0.126, "Either")]
    [InlineData(0.55, 0.121, "EarlyBeat")]
    [InlineData(0.49, 0.115, "EarlyBeat")]
    [InlineData(0.55, 0.115, "Either", 0.72)]
    [InlineData(0.55, 0.1, "EarlyBeat", 0.72)]
    public void ANarrowFrontBehindALongOneMayBeASecondWave(double delay, double front, string kind, double breadth = 0.86) =>
        Assert.Equal(kind, PairVerdict.Of(new(1.41, delay, 0.57, 0.31, front, breadth * front, 0.05, 18)).ToString());

    // The skewed bells of 81 beats a minute, 0.5 of the period apart, the second two thirds broader, or a front as broad of 162.
    [Theory]
    [InlineData(1.66, true)]
    [InlineData(1.2, false)]
    public void ADrawnOutFrontAtHalfTheTimeIsASecondWave(double breadth, bool isSecond) =>
        Assert.Equal(isSecond, PairVerdict.IsEvenSecondWave(new(0.744, 0.368, 0.583, 0, 0.077, 0.077 * breadth, 0.05, 36), false));

    // At half of a period of 0.96 s, behind all second waves: the weak beats of 125 a minute, or the second waves of 62.
    [Theory]
    [InlineData(0.48, 0.1, 0.9, true)]
    [InlineData(0.37, 0.1, 0.9, false)]
    [InlineData(0.48, 0.5, 0.9, false)]
    [InlineData(0.48, 0.1, 1.2, false)]
    public void AFrontAsShortAsTheFullOneAtHalfTheTimeMayBeAWeakBeat(double delay, double foot, double breadth, bool mayBe) =>
        Assert.Equal(mayBe, PairVerdict.MayAlternate(new(delay / 0.5, delay, 0.6, foot, 0.1, 0.1 * breadth, 0.04, 25)));

    // Later than the valve closes, by Weissler's regression, there is no second wave of a short front.
    [Fact]
    public void WhatComesBehindAllSecondWavesIsABeat() =>
        Assert.Equal(PairKind.EarlyBeat, PairVerdict.Of(Bigeminy with { SecondFrontSeconds = 0.087, DelaySeconds = 0.54 }));

    // A seventh as steep as its front, from where four fifths of the blood have run off, in the time of second waves: no heart throws so little each time.
    [Theory]
    [InlineData(0.15, 0.22, 0.4, "SecondWave")]
    [InlineData(0.25, 0.22, 0.4, "Either")]
    [InlineData(0.15, 0.45, 0.4, "Either")]
    public void WhatIsAsSteepAsMostSecondWavesIsOne(double slope, double foot, double delay, string kind)
    {
        var pairs = new RisePairs(1.244, delay, slope, foot, 0.121, 1.06 * 0.121, 0.15, 100);
        Assert.Equal(kind, PairVerdict.Of(pairs).ToString());
        Assert.Equal(kind == "SecondWave", PairVerdict.IsUsual(pairs));
    }

    // Two bells, or two skewed ones, of 43 and 49 beats a minute, the second half as steep, as broad and later than Weissler's by less than he scatters.
    [Theory]
    [InlineData(1.23, 0.44, 0.116, 1.03)]
    [InlineData(1.38, 0.5, 0.121, 1.05)]
    public void WhatComesLittleLaterMayBeEither(double period, double delay, double front, double breadth) =>
        Assert.Equal(PairKind.Either, PairVerdict.Of(new(period, delay, 0.51, 0.25, front, breadth * front, 0.05, 25)));

    [Fact]
    public void AFrontThatFillsATenthOfThePeriodIsThatOfOneBeat() =>
        Assert.Equal(PairKind.SecondWave, PairVerdict.Of(Bigeminy with { FrontSeconds = 0.145, SecondFrontSeconds = 0.13 }));

    // A heart throws out what has flowed in while it waited, a second wave is the same share of its beat each time.
    [Theory]
    [InlineData(0.03, "SecondWave")]
    [InlineData(0.15, "Either")]
    public void ABeatMayHideInALongFrontWhoseSecondOnesDiffer(double scatter, string kind) =>
        Assert.Equal(kind, PairVerdict.Of(Bigeminy with { FrontSeconds = 0.133, SecondFrontSeconds = 0.11, Scatter = scatter }).ToString());

    // What travels on is never narrower than it was; a beat that throws less blood is over sooner. That late, it is a second wave's rather.
    [Theory]
    [InlineData(0.11, 0.42, 0.11, 0.4, "Either")]
    [InlineData(0.11, 0.42, 0.06, 0.4, "SecondWave")]
    [InlineData(0.11, 0.42, 0.06, 0.3, "Either")]
    [InlineData(0.12, 0.42, 0.06, 0.3, "SecondWave")]
    [InlineData(0.11, 0.51, 0.11, 0.4, "SecondWave")]
    public void ABeatMayHideInALongFrontWhereTheSecondOneIsNarrower(double secondSeconds, double delay, double scatter, double foot, string kind) =>
        Assert.Equal(kind, PairVerdict.Of(Bigeminy with { FrontSeconds = 0.133, SecondFrontSeconds = secondSeconds, DelaySeconds = delay, Scatter = scatter, FootShare = foot }).ToString());

    // All blood of the beat before has run off: nothing of it is left to come as a second wave, however weak and broad what comes is.
    [Theory]
    [InlineData(0.02, 0.085, "EarlyBeat")]
    [InlineData(0.15, 0.085, "SecondWave")]
    [InlineData(0.02, 0.14, "SecondWave")]
    public void AWeakBeatFromTheFootIsOne(double foot, double frontSeconds, string kind) =>
        Assert.Equal(kind, PairVerdict.Of(Late with { SlopeShare = 0.15, FootShare = foot, FrontSeconds = frontSeconds, SecondFrontSeconds = 1.2 * frontSeconds }).ToString());

    // Narrower by an eighth and more than a quick front: no wave that has travelled.
    [Fact]
    public void AWeakNarrowFrontIsABeat() =>
        Assert.Equal(PairKind.EarlyBeat, PairVerdict.Of(Late with { SlopeShare = 0.15, SecondFrontSeconds = 0.07 }));

    // The latest second wave of 40 a minute is due 0.45 s after the front (Weissler); what comes a tenth of a second later is none.
    [Theory]
    [InlineData(0.5, "Either")]
    [InlineData(0.6, "EarlyBeat")]
    public void AWeakWaveFarBehindAllSecondWavesIsABeat(double delay, string kind) =>
        Assert.Equal(kind, PairVerdict.Of(Bigeminy with { PeriodSeconds = 1.5, DelaySeconds = delay, SlopeShare = 0.15, SecondFrontSeconds = 0.082 }).ToString());

    // A front of a tenth of the time is short that late as well: what is narrower, or nearly as high and as short, may be a beat.
    [Theory]
    [InlineData(0.1, 0.5, "Either")]
    [InlineData(0.118, 0.5, "SecondWave")]
    [InlineData(0.112, 0.8, "Either")]
    public void ALateBeatMayHideBehindAShortFront(double secondSeconds, double share, string kind) =>
        Assert.Equal(kind, PairVerdict.Of(Bigeminy with { FrontSeconds = 0.12, SecondFrontSeconds = secondSeconds, DelaySeconds = 0.55, SlopeShare = share }).ToString());

    // Two even beats of a slow pulse, 48 a minute, differ in height by chance: early by a tenth, or none of a pair.
    [Theory]
    [InlineData(0.42, "EarlyBeat")]
    [InlineData(0.5, "None")]
    public void PairsThatComeMoreSlowlyThanAnyPulseAreEarlyOrNone(double delayShare, string kind) =>
        Assert.Equal(kind, PairVerdict.Of(Bigeminy with { PeriodSeconds = 2.5, DelaySeconds = 2.5 * delayShare, SlopeShare = 0.85, FootShare = 0 }).ToString());

    // Refractory for 0.25 to 0.3 s.
    [Fact]
    public void WhetherAHeartBeatsAgainWithinThreeTenthsIsNotTold() =>
        Assert.Equal(PairKind.Either, PairVerdict.Of(Bigeminy with { PeriodSeconds = 1, DelaySeconds = 0.285, FrontSeconds = 0.065, SecondFrontSeconds = 0.055 }));

    // Unusual as early beats are at such a rate, these fronts are no longer than those of beats.
    [Fact]
    public void AQuickFrontAtMoreThan126IsNotTold() =>
        Assert.Equal(PairKind.Either, PairVerdict.Of(Bigeminy with { PeriodSeconds = 0.93, DelaySeconds = 0.33, FrontSeconds = 0.065, SecondFrontSeconds = 0.055 }));

    // So soon and at such a rate as well: the second wave of a pulse of 70 a minute.
    [Fact]
    public void WhatIsTwiceUnlikelyIsASecondWave() =>
        Assert.Equal(PairKind.SecondWave, PairVerdict.Of(Bigeminy with { PeriodSeconds = 0.87, DelaySeconds = 0.28, FrontSeconds = 0.079, SecondFrontSeconds = 0.068 }));

    // The dicrotic waves of resting fingers before a camera rise from 0.75 of the crest and more (Hoffman, npj Digit Med 2022;5:146).
    [Fact]
    public void WhatRisesHighOnTheFlankIsASecondWave() =>
        Assert.Equal(PairKind.SecondWave, PairVerdict.Of(Bigeminy with { FootShare = 0.8 }));

    [Fact]
    public void NoHeartBeatsAgainAtOnce() =>
        Assert.Equal(PairKind.SecondWave, PairVerdict.Of(Bigeminy with { DelaySeconds = 0.29, FootShare = 0 }));

    [Fact]
    public void NoHeartBeatsEarlyEachSecondTimeAtMoreThan126() => Assert.Equal(PairKind.SecondWave, PairVerdict.Of(Dicrotic));

    // Nothing says which of two fronts of one height comes first.
    [Fact]
    public void FullBeatsAreLeftToTheirFronts() => Assert.Equal(PairKind.None, PairVerdict.Of(Dicrotic with { SlopeShare = 0.97 }));

    [Fact]
    public void ARippleIsNothing() => Assert.Equal(PairKind.None, PairVerdict.Of(Bigeminy with { SlopeShare = 0.05 }));

    // Half a period apart: the heights alternate pair by pair, and the window repeats better with both.
    [Theory]
    [InlineData(0.8, 8, 0.06, 0.1, true)]
    [InlineData(0.8, 3, 0.06, 0.1, false)]
    [InlineData(0.8, 8, 0.01, 0.1, false)]
    [InlineData(0.95, 8, 0.06, 0.1, false)]
    [InlineData(0.8, 8, 0.06, 0.112, false)]
    public void EvenWavesAreOneBeatWhereTheyAlternate(double share, double contrast, double gain, double secondSeconds, bool isOne)
    {
        var even = new RisePairs(0.9, 0.45, share, 0.05, 0.1, secondSeconds, 0.05, contrast);
        Assert.Equal(isOne, PairVerdict.MayBeEven(gain, false) && PairVerdict.IsEvenSecondWave(even, false));
        Assert.True(PairVerdict.MayBeEven(0, true) && PairVerdict.IsEvenSecondWave(even with { SlopeShare = 0.85 }, true));
    }
}
