using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>
/// Something that trembles in one mixture for both lights, whose height and rate waver, alone or in a finger's place. How long
/// systole and its upstroke last, a quarter of a second and a tenth to a quarter, is common practice.
/// </summary>
public sealed class TremblingThingTests
{
    // Bent by a quarter, as steep in front as a pulse, and R 0.5 as of blood: what it has of a third harmonic comes by chance.
    [Theory]
    [InlineData(0.8, 0.5)]
    [InlineData(1.2, 0.5)]
    [InlineData(1.6, 0.9)]
    public void WhatTremblesBesideDriftIsNoFinger(double hz, double ratio)
    {
        (double, double) Tremble(double t)
        {
            var light = 0.012 * Trembling(t, hz);
            return (light + Drift(t), (ratio * light) + (0.9 * Drift(t)));
        }

        var heard = Heard.Of(60, (Nothing with { Seconds = 80, Movement = Tremble }).Samples());
        Assert.Empty(heard.Readings);
        Assert.InRange(heard.Usable.Count(), 0, 3);
    }

    // The finger has shown that it lives, and leaves in less than a second; the light goes to three quarters of what it was.
    [Theory]
    [InlineData(100, 1.2)]
    [InlineData(75, 0.9)]
    public void WhatTremblesWhereALivingFingerWasIsNotAlive(double pulsePerMinute, double hz)
    {
        var finger = new Finger { RateHz = 60, Seconds = 80, PulsePerMinute = pulsePerMinute, PerfusionPercent = 0.7, NoisePercent = 0.001 };
        var living = finger.Samples();
        (double, double) Tremble(double t)
        {
            var light = 0.27 + (0.005 * Trembling(t, hz)) + Drift(t);
            return (light, 0.2 + (0.0026 * Trembling(t, hz)) + (0.9 * Drift(t)));
        }

        var lifeless = (Nothing with { Seconds = 80, Movement = Tremble }).Samples();
        const int left = 25;
        var heard = Heard.Of(60, [.. living.Take(left * 60), .. lifeless.Skip(left * 60)]);
        Assert.NotEmpty(heard.Readings);
        Assert.DoesNotContain(heard.Readings, reading => reading.SecondIndex >= left);
        Assert.InRange(heard.Seconds.Count(second => second.SecondIndex > left && second.IsUsable), 0, 3);
    }

    // Of bells 0.22 s wide at half their height; a second wave may take four fifths of it. Where beats were counted at another
    // rate than repeats, or nothing repeats, the third harmonic is not the wave's.
    [Theory]
    [InlineData(1.2, 0.035, 1, 0.9, true)]
    [InlineData(1.2, 0.045, 1, 0.9, false)]
    [InlineData(0.6, 0.015, 1, 0.9, true)]
    [InlineData(0.6, 0.025, 1, 0.9, false)]
    [InlineData(0.45, 0.013, 1, 0.9, false)]
    [InlineData(1.2, 0.035, 2, 0.9, false)]
    [InlineData(1.2, 0.035, 1, 0.7, false)]
    public void TheSlowerAPulseTheMoreOfItIsItsThirdHarmonic(double period, double third, int beatsOfPeriod, double periodicity, bool isLacking)
    {
        var second = At(period, third, beatsOfPeriod, periodicity);
        Assert.Equal(isLacking, new Liveness(new()).IsLacking(second with { Pulse = second.Pulse with { FrontSteepness = 0.2 } }));
    }

    // What a spring swings comes back as it went, a wheel keeps its rate: two harmonics with a front, unsteady, are neither's.
    [Theory]
    [InlineData(0.4, 0.07, 0.02, false)]
    [InlineData(0.2, 0.07, 0.02, true)]
    [InlineData(0.4, 0.035, 0.02, true)]
    [InlineData(0.4, 0.07, 0.009, true)]
    public void ARoundWaveWithAFrontInAnUnsteadyRateIsNoSwing(double front, double unsteady, double third, bool isLacking)
    {
        var second = At(0.8, third, 1, 0.9);
        Assert.Equal(isLacking, new Liveness(new()).IsLacking(second with { Pulse = second.Pulse with { FrontSteepness = front, UnsteadyShare = unsteady } }));
    }

    // A movement from the first second on whose own line was taken away; a known pulse may leave its first wave with one.
    [Theory]
    [InlineData(1, 3.8, false, true)]
    [InlineData(0, 3.8, false, true)]
    [InlineData(1, 0.5, false, false)]
    [InlineData(1, 3.8, true, false)]
    public void WhatIsLeftOfAWaveWithoutItsFirstOneIsNoPulse(int lines, double third, bool isShown, bool isLacking)
    {
        var liveness = new Liveness(new());
        if (isShown)
        {
            Show(liveness);
        }

        var second = At(0.8, third, 1, 0.9);
        Assert.Equal(isLacking, liveness.IsLacking(second with { Fit = second.Fit with { Lines = lines } }));
    }

    // A wave whose height wavers looks like a breath of an eighth of it.
    [Theory]
    [InlineData(0.14, false)]
    [InlineData(0.3, true)]
    public void WhatIsTooRoundIsProvenByAClearBreathAlone(double breathing, bool isShown)
    {
        var liveness = new Liveness(new());
        var round = At(0.8, third: 0.02, 1, 0.9);
        round = round with { Pulse = round.Pulse with { BreathingShare = breathing, FrontSteepness = 0.2 } };
        Assert.Equal(!isShown, liveness.IsLacking(round));
        for (var k = 0; k < 5; k++)
        {
            liveness.Remember(round);
        }

        Assert.Equal(isShown, liveness.IsShown);
    }

    [Fact]
    public void WhatWasShownIsShownAgainOnlyByWhatIsAsBefore()
    {
        var liveness = new Liveness(new());
        Show(liveness);
        liveness.Doubt();
        Assert.False(liveness.IsShown);
        liveness.Trust();
        Assert.True(liveness.IsShown);
        liveness.Doubt();
        liveness.Remember(At(0.8, third: 0.2, 1, 0.9));
        liveness.Trust();
        Assert.False(liveness.IsShown);
        Show(liveness);
        Assert.True(liveness.IsShown);
    }

    // A pulse told from movement, or beside a line, is the known one already.
    [Fact]
    public void WhatWasShownIsNotAskedAgainBesideMovementOrALine()
    {
        var liveness = new Liveness(new());
        Show(liveness);
        liveness.Doubt();
        var steady = At(0.8, third: 0.2, 1, 0.9);
        steady = steady with { Pulse = steady.Pulse with { BreathingShare = 0, UnsteadyShare = 0.01 } };
        Assert.True(liveness.IsLacking(steady));
        Assert.False(liveness.IsLacking(steady with { Fit = steady.Fit with { IsSeparated = true } }));
        var beside = steady with { Fit = steady.Fit with { Lines = 1 } };
        Assert.False(liveness.IsLacking(beside));
        liveness.Remember(beside);
        Assert.False(liveness.IsLacking(beside));
    }

    // A blade that passes a light takes it away, or lets it by, for a moment of each turn.
    [Theory]
    [InlineData(-0.7, true)]
    [InlineData(-0.9, false)]
    public void AShortDipIsNoPulseWhateverItsFront(double crest, bool isIn)
    {
        var form = new PulseForm(new(), new(new()));
        var second = At(0.8, third: 0.2, 1, 0.9);
        var dip = second with { Pulse = second.Pulse with { Crest = crest } };
        Assert.Equal(isIn, form.IsIn(dip));
        Assert.Equal(isIn, form.HasNoBack(dip));
    }

    // Something hard that is tapped: up for a quarter of the time, and as steep behind as in front.
    [Theory]
    [InlineData(0.4, 1.4, 2.9, false)]
    [InlineData(0.6, 1.4, 2.9, true)]
    [InlineData(0.4, 1.1, 2.9, true)]
    [InlineData(0.4, 1.4, 2.5, true)]
    public void AHumpInAQuarterOfItsBeatIsNoPulse(double front, double crest, double hz, bool isIn)
    {
        var second = At(0.58, third: 0.4, 1, 0.9);
        var hump = second with { Pulse = second.Pulse with { FrontSteepness = front, Crest = crest, FrequencyHz = hz } };
        Assert.Equal(isIn, new PulseForm(new(), new(new())).IsIn(hump));
    }

    private static readonly Finger Nothing = new() { RateHz = 60, PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.001 };

    private static void Show(Liveness liveness)
    {
        for (var k = 0; k < 5; k++)
        {
            liveness.Remember(At(0.8, third: 0.2, 1, 0.9));
        }
    }

    // Rate by a few hundredths and height by a sixth, slower than it comes and with nothing that repeats.
    private static double Trembling(double t, double hz)
    {
        var phase = 2 * Math.PI * hz * (t + (0.012 * Math.Sin(1.9 * t)) + (0.009 * Math.Sin((2.6 * t) + 1)));
        return 0.5 * (Math.Sin(phase) + (0.25 * Math.Sin((2 * phase) + 0.5))) * (1 + (0.12 * Math.Sin(1.13 * t)) + (0.1 * Math.Sin((0.71 * t) + 2)));
    }

    private static double Drift(double t) => 0.003 * (Math.Sin(0.19 * t) + Math.Sin((0.083 * t) + 1));

    private static SignalSecond At(double period, double third, int beatsOfPeriod, double periodicity)
    {
        var light = new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        var fit = new RatioFit(8, 0.6, 0.003, 0, 0.007, 1e-4, false, 0, 0, false, 0, default);
        var pulse = new WindowPulse(8, 60 * beatsOfPeriod / period, 0, 0.01, periodicity, period, 0.99, 1, 0.5, third, 0.13, 0.2, 2, 2);
        return new(20, light, fit, pulse, false);
    }
}
