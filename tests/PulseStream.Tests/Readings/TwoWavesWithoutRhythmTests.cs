using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Strong second waves of a heart that keeps no rhythm: neither refused nor counted as beats.</summary>
public sealed class TwoWavesWithoutRhythmTests
{
    private const double RateHz = 100;
    private const double PercentTolerance = 0.3;
    private const int StartSeconds = 15;
    private const int TotalSeconds = 60;

    // Two bells a beat, which stretch with the interval or keep their time; intervals of any length within a quarter of the mean
    // and more, as in atrial fibrillation.
    [Theory]
    [InlineData(62, 0.27, 0.75, true, 3)]
    [InlineData(92, 0.25, 0.7, true, 4)]
    [InlineData(78, 0.22, 0.8, false, 5)]
    [InlineData(70, 0.3, 0.65, true, 6)]
    public void TheyAreReadAndNoneIsCounted(double perMinute, double spread, double height, bool stretches, int seed)
    {
        var beats = BeatsOf(perMinute, spread, seed);
        var heard = Heard.Of(RateHz, new Finger { Seconds = TotalSeconds, Blood = t => Blood(beats, t, 60 / perMinute, height, stretches) }.Samples());
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.InRange(settled.Count(s => s.IsUsable) / (double)settled.Length, 0.9, 1);
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
        var heart = new Heart(beats, []);
        var told = heard.Usable.Where(s => s.SecondIndex >= StartSeconds && s.PulseRatePerMinute is not null).ToArray();
        Assert.InRange(told.Length / (double)settled.Length, 0.8, 1);
        Assert.All(told, s => Assert.InRange(
            s.PulseRatePerMinute!.Value,
            Math.Min(heart.RateBefore(s.SecondIndex + 1), heart.RateByTimeBefore(s.SecondIndex + 1)) - 3,
            Math.Max(heart.RateBefore(s.SecondIndex + 1), heart.RateByTimeBefore(s.SecondIndex + 1)) + 3));
    }

    // Four tenths of a beat behind the first, a second wave of nearly its height takes the first harmonic away.
    [Theory]
    [InlineData(56, 0.8, 0.4)]
    [InlineData(74, 0.85, 0.4)]
    public void APulseMayHaveMoreOfItsThirdHarmonicThanOfItsFirst(double perMinute, double height, double delayShare)
    {
        var heard = Heard.Of(RateHz, new Finger { Seconds = TotalSeconds, Blood = Wave }.Samples());
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.InRange(settled.Count(s => s.IsUsable) / (double)settled.Length, 0.9, 1);
        Assert.All(settled, s => Assert.InRange(s.Usable?.PulseRatePerMinute ?? perMinute, 0.9 * perMinute, 1.1 * perMinute));

        double Wave(double t)
        {
            var beats = (perMinute / 60 * t) + (0.07 * Math.Sin(2 * Math.PI * 0.24 * t));
            var phase = beats - Math.Floor(beats);
            return Bell(phase, 0.17, 0.065) + (height * Bell(phase, 0.17 + delayShare, 0.09));
        }
    }

    // Three periods of a faster wave that are taken for one beat have more of the third harmonic as well.
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void SecondWavesExplainAFirstHarmonicThatIsLost(bool hasSecondWaves, bool isLost)
    {
        var liveness = new Liveness(new());
        Assert.Equal(isLost, liveness.HasLostFirstWave(At(new WindowPulse(9, 60, 0, 0.01, 0.97, 1, 0.99, 0.3, 0.5, 1.1, 0.1, 0.2, 2, 2, HasSecondWaves: hasSecondWaves))));
    }

    // Of a wave of more than three beats a second the smoothing leaves half as much of a third harmonic. What breathes by no more than a tenth vouches for none.
    [Theory]
    [InlineData(0.3, 0.2, true)]
    [InlineData(0.3, 0.1, false)]
    [InlineData(0.4, 0.2, false)]
    public void AFastPulseIsAskedForFewerOvertones(double period, double third, bool isIn)
    {
        var form = new PulseForm(new(), new(new()));
        Assert.Equal(isIn, form.IsIn(At(new WindowPulse(24, 60 / period, 0, 0.03, 0.7, period, 0.92, 0.05, 0.2, third, 0.1, 0.2, 2, 4.9))));
    }

    private static SignalSecond At(in WindowPulse pulse)
    {
        var light = new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        return new(20, light, new RatioFit(8, 0.6, 0.003, 0, 0.007, 1e-4, false, 0, 0, false, 0, default), pulse, false);
    }

    private static double[] BeatsOf(double perMinute, double spread, int seed)
    {
        var chance = new Random(seed);
        List<double> beats = [0.3];
        while (beats[^1] < TotalSeconds + 3)
        {
            beats.Add(beats[^1] + (60 / perMinute * (1 + (spread * ((2 * chance.NextDouble()) - 1)))));
        }

        return [.. beats];
    }

    // The steepest rise, a width before the first bell's top, is the beat.
    private static double Blood(double[] beats, double t, double meanSeconds, double height, bool stretches)
    {
        var blood = 0.0;
        for (var k = 0; k + 1 < beats.Length; k++)
        {
            var length = stretches ? beats[k + 1] - beats[k] : meanSeconds;
            var phase = (t - beats[k]) / length;
            blood += Math.Abs(phase) < 2 ? Bell(phase, 0.075, 0.075) + (height * Bell(phase, 0.45, 0.115)) : 0;
        }

        return blood;
    }

    private static double Bell(double phase, double at, double width) => Math.Exp(-0.5 * (phase - at) * (phase - at) / (width * width));
}
