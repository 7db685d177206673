using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>
/// Pulses whose crest comes late: they fall as fast as they rise, and hardly differ from a swing where they are fast. That stiff vessels
/// fill for half of the beat is common practice; what tells them is the breath beside them, and that they were seen to live.
/// </summary>
public sealed class RoundPulseTests
{
    private const int StartSeconds = 15;

    // Stiff vessels: two harmonics and a fortieth of a third, at rates that no swing wavers by. Hearts scatter by some hundredths (common practice).
    [Theory]
    [InlineData(55, 0.018)]
    [InlineData(66, 0.016)]
    [InlineData(80, 0.02)]
    public void APulseOfTwoHarmonicsWithAFrontIsRead(double pulsePerMinute, double scatter)
    {
        var random = new Random(3);
        var heart = Heart.Of(62, (_, _) => 60 / pulsePerMinute * (1 + (scatter * Math.Sqrt(12) * (random.NextDouble() - 0.5))));
        double Blood(double t)
        {
            var k = Math.Max(1, Array.FindIndex(heart.Fronts, f => f > t));
            var turn = Math.Tau * (t - heart.Fronts[k - 1]) / (heart.Fronts[k] - heart.Fronts[k - 1]);
            return 0.5 + (0.4 * (Math.Sin(turn) + (0.25 * Math.Sin(2 * turn)) + (0.025 * Math.Sin(3 * turn))));
        }

        var heard = Heard.Of(100, new Finger { Seconds = 60, BreathingPercent = 0.1, NoisePercent = 0.003, Blood = Blood }.Samples());
        Assert.InRange(heard.Usable.Count(s => s.SecondIndex >= StartSeconds), 44, 60 - StartSeconds);
    }

    // Breathing is not looked for beside a known pulse, which then has shown it.
    [Theory]
    [InlineData(0.03, 0.1, false, true)]
    [InlineData(0.03, 0.05, false, false)]
    [InlineData(0.03, double.NaN, false, false)]
    [InlineData(0.03, double.NaN, true, true)]
    [InlineData(0.01, double.NaN, true, false)]
    public void WhatWasShownToLiveIsNotAskedToBreatheAgain(double third, double breathing, bool isShown, bool isIn)
    {
        var round = Round(0.36) with { ThirdWaveShare = third, BreathingShare = breathing, Crest = 0 };
        Assert.Equal(isIn, FormAfter(isShown).IsIn(At(round)));
    }

    [Theory]
    [InlineData(0.8, 0.96, 1.1, true)]
    [InlineData(0.8, 0.94, 1.1, false)]
    [InlineData(0.96, 0.91, 1.1, true)]
    [InlineData(0.8, 0.96, 1.3, false)]
    public void ARoundWaveThatRepeatsIsAskedForNoLikenessOfItsBeats(double agreement, double periodicity, double harmonic, bool isIn)
    {
        var round = Round(0.36) with { Agreement = agreement, Periodicity = periodicity, FrequencyHz = harmonic / 0.36 };
        Assert.Equal(isIn, FormAfter(isShown: false).IsIn(At(round)));
    }

    // Slower waves may be two equal bumps of a beat that lasts twice as long.
    [Theory]
    [InlineData(0.36, 0.3, 0.3, 8, true)]
    [InlineData(0.5, 0.3, 0.3, 8, false)]
    [InlineData(0.36, 0.1, 0.3, 8, false)]
    [InlineData(0.36, 0.3, 0.05, 8, false)]
    [InlineData(0.36, 0.3, 0.3, 4, false)]
    public void AFastWaveThatBreathesClearlyIsAskedForNoThirdHarmonic(double period, double breathing, double crest, int windowSeconds, bool isIn)
    {
        var round = Round(period) with { ThirdWaveShare = 0.007, BreathingShare = breathing, Crest = crest };
        Assert.Equal(isIn, FormAfter(isShown: false).IsIn(At(round, windowSeconds)));
    }

    // A late crest leaves it up for longer than down: then it has to lean forward a little and to scatter.
    [Theory]
    [InlineData(0.1, 0.09, true)]
    [InlineData(0.05, 0.09, false)]
    [InlineData(0.1, 0.06, false)]
    public void SoIsOneThatIsUpForLongerThanDownIfItLeansAndScatters(double front, double unsteady, bool isIn)
    {
        var round = Round(0.36) with { ThirdWaveShare = 0.009, BreathingShare = 0.3, Crest = -0.1, FrontSteepness = front, UnsteadyShare = unsteady };
        Assert.Equal(isIn, FormAfter(isShown: false).IsIn(At(round)));
    }

    // No rhythm, and a little of a third harmonic. Two waves a beat that were counted as beats are narrower.
    [Theory]
    [InlineData(0.93, 0.3, 0.2, 8, false, true)]
    [InlineData(0.85, 0.3, 0.2, 8, false, false)]
    [InlineData(0.93, 0.13, 0.2, 8, false, false)]
    [InlineData(0.93, 0.3, 0.05, 8, false, false)]
    [InlineData(0.93, 0.3, 0.2, 4, false, false)]
    [InlineData(0.93, double.NaN, 0.05, 4, true, true)]
    public void BeatsThatAreAlikeWithoutRhythmAreAHeartsWhereItBreathes(double agreement, double breathing, double crest, int windowSeconds, bool isShown, bool isIn)
    {
        var round = Round(0.5) with { Agreement = agreement, Periodicity = 0.4, ThirdWaveShare = 0.11, BreathingShare = breathing, Crest = crest };
        Assert.Equal(isIn, FormAfter(isShown).IsIn(At(round, windowSeconds)));
        Assert.False(FormAfter(isShown).IsIn(At(round with { FrequencyHz = 1.3 / 0.5 }, windowSeconds)));
    }

    // High for a short time, and as steep behind as no unknown wave may be.
    [Theory]
    [InlineData(-0.25, 0.05, true, true)]
    [InlineData(-0.25, 0.05, false, false)]
    [InlineData(-0.25, 0.01, true, false)]
    [InlineData(-0.25, double.NaN, true, false)]
    [InlineData(-0.55, 0.05, true, false)]
    public void ALateCrestOfWhatLivesMayFallFasterThanItRises(double front, double third, bool isShown, bool isIn)
    {
        var late = Round(0.5) with { FrontSteepness = front, Crest = 0.9, ThirdWaveShare = third, BreathingShare = double.NaN, Agreement = 0.7, Periodicity = 0.85 };
        Assert.Equal(isIn, FormAfter(isShown).IsIn(At(late)));
    }

    // Where its rises are is not well known.
    [Theory]
    [InlineData(0.95, true, 1.1, 0.95)]
    [InlineData(0.85, true, 1.1, 0.3)]
    [InlineData(0.95, false, 1.1, 0.3)]
    [InlineData(0.95, true, 1.3, 0.3)]
    public void AKnownRoundPulseThatRepeatsIsAsAlikeAsItRepeats(double periodicity, bool isKnown, double harmonic, double likeness)
    {
        var round = Round(0.36) with { Agreement = 0.3, Periodicity = periodicity, FrontSteepness = 0, Crest = 0, ThirdWaveShare = 0, FrequencyHz = harmonic / 0.36 };
        Assert.Equal(likeness, new LastingLikeness(new(), hasRed: true).Of(round, isKnown), 1e-9);
    }

    // Up for half of the beat and down for the other, beside a small breath.
    [Theory]
    [InlineData(170)]
    [InlineData(185)]
    [InlineData(195)]
    public void AFastPulseWithALateCrestIsReadAllTheTime(double pulsePerMinute)
    {
        double Blood(double t) => LateCrest((pulsePerMinute / 60 * t) + (0.03 * Math.Sin(2 * Math.PI * 0.23 * t)) + (0.02 * Math.Sin(4.1 * t)), 0.54, 1, 1.15);
        var heard = Heard.Of(100, new Finger { Seconds = 50, Blood = Blood, BreathingPercent = 0.35 }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.InRange(s.Spo2!.Value.Percent, 96.5, 97.5));
    }

    // In atrial fibrillation no two intervals are alike, and the beats stretch with them.
    [Theory]
    [InlineData(110, 5)]
    [InlineData(125, 6)]
    public void LateCrestsWithoutRhythmAreRead(double pulsePerMinute, int seed)
    {
        const int seconds = 60;
        var chance = new Random(seed);
        var heart = Heart.Of(seconds + 2, (_, _) => 60 / pulsePerMinute * (1 + (0.3 * ((2 * chance.NextDouble()) - 1))));
        double Blood(double t)
        {
            var k = Math.Max(Array.FindLastIndex(heart.Fronts, front => front <= t), 0);
            return LateCrest((t - heart.Fronts[k]) / (heart.Fronts[k + 1] - heart.Fronts[k]), 0.45, 0.9, 1.3);
        }

        var heard = Heard.Of(100, new Finger { Seconds = seconds, Blood = Blood, BreathingPercent = 1.5 }.Samples());
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.InRange(settled.Count(s => s.IsUsable) / (double)settled.Length, 0.9, 1);
        Assert.All(heard.Usable, s => Assert.InRange(s.Spo2!.Value.Percent, 96.5, 97.5));
    }

    // Up to a crest and down to the end, as straight as the power is near 1.
    private static double LateCrest(double phase, double crest, double end, double power)
    {
        var p = phase - Math.Floor(phase);
        return Math.Pow(Math.Max(0, Math.Min(p / crest, (end - p) / (end - crest))), power);
    }

    private static PulseForm FormAfter(bool isShown)
    {
        var liveness = new Liveness(new());
        for (var k = 0; isShown && k < 5; k++)
        {
            liveness.Remember(At(Round(0.8) with { ThirdWaveShare = 0.2 }));
        }

        Assert.Equal(isShown, liveness.IsShown);
        return new(new(), liveness);
    }

    // As steep behind as in front, beats that are alike, and no third harmonic to speak of.
    private static WindowPulse Round(double period) => new(8, 60 / period, 0, 0.01, 0.95, period, 0.99, 0, 0.2, 0.03, 0.13, 0.2, 2, 1.05 / period);

    private static SignalSecond At(WindowPulse pulse, int windowSeconds = 8)
    {
        var light = new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        return new(20, light, new RatioFit(windowSeconds, 0.6, 0.003, 0, 0.007, 1e-4, false, 0, 0, false, 0, default), pulse, false);
    }
}
