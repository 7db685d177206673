using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

public sealed class IntervalTests
{
    // Errors of neighbouring seconds go together: eight hundred seconds are some hundred independent ones, whose share
    // scatters by two in a hundred.
    private const double LeastShare = 0.91;
    private const double MostShare = 0.995;

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.05)]
    [InlineData(0.2)]
    public void TheIntervalHoldsTheTruthInAboutNineteenSecondsOfTwenty(double noisePercent)
    {
        var held = 0;
        var all = 0;
        for (var seed = 1; seed <= 40; seed++)
        {
            var finger = new Finger { Seed = seed, NoisePercent = noisePercent, PulsePerMinute = 55 + seed, BreathingPercent = 0.3 };
            foreach (var second in Heard.Of(100, finger.Samples()).Usable)
            {
                all++;
                held += second.Spo2!.Value.LowPercent <= 97 && second.Spo2.Value.HighPercent >= 97 ? 1 : 0;
            }
        }

        Assert.True(all > 800);
        Assert.InRange(held / (double)all, LeastShare, MostShare);
    }

    // The third harmonic of thirteen breaths a minute lies on a slow pulse's first wave for a whole minute: far less than all white noise,
    // it puts R off by more.
    [Theory]
    [InlineData(39.6)]
    [InlineData(40.2)]
    public void TheIntervalOfASlowPulseHoldsWhatBreathingsOvertonesDo(double pulsePerMinute)
    {
        var held = 0;
        var all = 0;
        for (var seed = 1; seed <= 8; seed++)
        {
            var random = new Random(seed);
            var heart = Heart.Of(62, (_, _) => 60 / pulsePerMinute * (0.99 + (0.02 * random.NextDouble())));
            var phase = Math.Tau * random.NextDouble();
            (double, double) Overtone(double t)
            {
                var light = 6e-5 * Math.Sin((Math.Tau * 0.66 * t) + phase);
                return (light, 1.1 * light);
            }

            var finger = new Finger { Seconds = 60, Seed = seed, PerfusionPercent = 1.3, NoisePercent = 0.005, Blood = heart.BloodAt, Movement = Overtone };
            foreach (var second in Heard.Of(100, finger.Samples()).Usable.Where(s => s.SecondIndex >= 15))
            {
                all++;
                held += second.Spo2!.Value.LowPercent <= 97 && second.Spo2.Value.HighPercent >= 97 ? 1 : 0;
            }
        }

        Assert.True(all > 300);
        Assert.InRange(held / (double)all, LeastShare, 1);
    }

    [Fact]
    public void TheIntervalIsNarrowOnAQuietFinger()
    {
        var widths = Heard.Of(100, new Finger().Samples()).Usable.Select(s => s.Spo2!.Value.HighPercent - s.Spo2.Value.LowPercent).Order().ToArray();
        Assert.InRange(widths[widths.Length / 2], 0.01, 0.2);
    }

    [Fact]
    public void TheIntervalIsWiderWhileSaturationFalls()
    {
        // A point each second from the twentieth on: what is read of the window lies back, and the second begins with this.
        var heard = Heard.Of(100, new Finger { Seconds = 34, Spo2 = t => 97 - Math.Max(0, t - 20) }.Samples());
        var falling = heard.Usable.Where(s => s.SecondIndex >= 26).ToArray();
        Assert.NotEmpty(falling);
        Assert.All(falling, s => Assert.InRange(97 - (s.SecondIndex - 20), s.Spo2!.Value.LowPercent, s.Spo2.Value.HighPercent));
    }

    // What breathing leaves lies where a slow pulse is, and is larger beside a weak one. Below 50 a minute it is measured, but not of what repeats as slowly with two beats.
    [Fact]
    public void TheIntervalOfASlowPulseAndOfAWeakOneIsWider()
    {
        var usual = WidthOf(error: 0.01, size: 0.01, period: 0.8);
        Assert.Equal(usual, WidthOf(error: 0.01, size: 0.01, period: 0.4), 6);
        Assert.InRange(WidthOf(error: 0.01, size: 0.01, period: 1.15) / usual, 1.1, 1.2);
        Assert.Equal(1.2, WidthOf(error: 0.01, size: 0.01, period: 1.5) / usual, 0.01);
        var pairs = At(error: 0.01, size: 0.01, period: 1.5);
        Assert.Equal(1.5, WidthOf(pairs with { Pulse = pairs.Pulse with { RatePerMinute = 80 } }) / usual, 0.01);
        Assert.InRange(WidthOf(error: 0, size: 0.0005, period: 0.8), 0.08, 0.15);
        Assert.InRange(WidthOf(error: 0, size: 0.01, period: 0.8), 0.005, 0.03);
    }

    // Told from recorded movement, R lay 1.4 times as far off as its standard error lets expect.
    [Fact]
    public void TheIntervalOfAPulseToldFromMovementIsWider()
    {
        var plain = At(error: 0.01, size: 0.01, period: 0.8);
        Assert.InRange(WidthOf(plain with { Fit = plain.Fit with { IsSeparated = true } }) / WidthOf(plain), 1.5, 1.8);
    }

    // A leak has a sign: it can have moved R from one side alone.
    [Theory]
    [InlineData(0.04, 1, 0)]
    [InlineData(-0.04, 0, 1)]
    public void ALeakWidensTheIntervalOnItsOwnSide(double leakedRatio, double low, double high)
    {
        var second = At(0.01, 0.01, 0.8);
        var interval = new SaturationInterval(CalibrationCurve.TextbookLine, new());
        var plain = interval.Of(second, 0);
        var leaked = interval.Of(second, leakedRatio);
        Assert.Equal(plain.Percent, leaked.Percent);
        Assert.Equal(low, plain.LowPercent - leaked.LowPercent, 6);
        Assert.Equal(high, leaked.HighPercent - plain.HighPercent, 6);
    }

    // Light is never negative: a lamp's mean is its amplitude at least. Of the pulse in infrared 1 / (1 + a) is left, of that in red
    // 1 / (1 + M a), so that blood's R is the one read times (1 + M a) / (1 + a), within a thousandth of 1 + (M − 1) a.
    [Theory]
    [InlineData(0.02, 3.0)]
    [InlineData(0.02, 0.2)]
    [InlineData(0.01, 2.0)]
    public void ALampsLeastMeanIsInTheValueThatIsTold(double amplitude, double mix)
    {
        var plain = At(0.01, 0.01, 0.8);
        var second = plain with { Fit = plain.Fit with { Lines = 1, RoomLightSize = amplitude, LightMix = mix } };
        var told = new SaturationInterval(CalibrationCurve.TextbookLine, new()).Of(second, 0);
        var ratio = second.Fit.Ratio * (1 + (mix * amplitude)) / (1 + amplitude);
        Assert.Equal(CalibrationCurve.TextbookLine.PercentAt(ratio), told.Percent, 0.03);
        Assert.InRange(told.Percent, told.LowPercent, told.HighPercent);
    }

    private static double WidthOf(double error, double size, double period) => WidthOf(At(error, size, period));

    private static double WidthOf(in SignalSecond second)
    {
        var told = new SaturationInterval(CalibrationCurve.TextbookLine, new()).Of(second, 0);
        return told.HighPercent - told.LowPercent;
    }

    private static SignalSecond At(double error, double size, double period)
    {
        var light = new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        var fit = new RatioFit(8, 0.8, error, 0, size, 1e-4, false, 0, 0, false, 0, default);
        var pulse = new WindowPulse(9, 60 / period, 0, 0.01, 0.97, period, 0.99, 1, 0.5, 0.2, double.NaN, double.NaN, 2, 2);
        return new(10, light, fit, pulse, false);
    }
}
