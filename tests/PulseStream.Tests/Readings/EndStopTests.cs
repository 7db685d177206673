using PulseStream.Readings;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Light that goes to the converter's end stop and comes back from it.</summary>
public sealed class EndStopTests
{
    private const int RateHz = 100;
    private const int From = 18;
    private const int To = 30;
    private const double InfraredCounts = 80_000;

    // Of 0.984 of the largest count each breath and pulse may make more; of half of it none does.
    [Theory]
    [InlineData(0.984, true)]
    [InlineData(0.5, false)]
    public void LightThatGoesAsFarAsTheEndStopIsNamedForIt(double share, bool isNamed)
    {
        var samples = new Finger { Seconds = 40, PerfusionPercent = 1 }.Samples();
        for (var n = From * RateHz; n < To * RateHz; n++)
        {
            samples[n] = Sample.OfLight(samples[n]!.Value.Red, samples[n]!.Value.Infrared + (1.3 * InfraredCounts));
        }

        var heard = Heard.Of(RateHz, samples, fullScale: 2.3 * InfraredCounts / share);
        for (var second = From + 1; second < To; second++)
        {
            Assert.NotEqual(Reasons.None, heard.ReasonsAt(second));
            Assert.Equal(isNamed, heard.ReasonsAt(second).HasFlag(Reasons.Saturated));
        }
    }

    // What is seen first behind an end stop is the light on its way back, in which a pulse of half a percent is nothing.
    [Theory]
    [InlineData(130, 0.5, 0.32, 0.12)]
    [InlineData(130, 0.2, 0.32, 0.12)]
    [InlineData(65, 0.5, 0.2, 0.09)]
    [InlineData(100, 0.5, 0.2, 0.09)]
    public void TheWayBackFromTheEndStopIsNotRead(double pulsePerMinute, double perfusionPercent, double wayBackSeconds, double backSeconds)
    {
        const double fullScale = 150_000;
        var finger = new Finger { Seconds = 40, PerfusionPercent = perfusionPercent, PulsePerMinute = pulsePerMinute, Movement = t => (1.2 * Back(t), 1.35 * Back(t)) };
        var samples = Array.ConvertAll(finger.Samples(), s => (Sample?)Sample.OfLight(Math.Min(s!.Value.Red, fullScale), Math.Min(s.Value.Infrared, fullScale)));
        var heard = Heard.Of(RateHz, samples, fullScale: fullScale);
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, 0.5));
        Assert.Contains(heard.Usable, s => s.SecondIndex > To);

        double Back(double t) => t < From ? 0 : Math.Clamp((To + backSeconds - t) / wayBackSeconds, 0, 1);
    }
}
