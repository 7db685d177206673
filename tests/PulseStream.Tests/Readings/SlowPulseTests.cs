using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A slow pulse beside breathing that is nearly as large and not a pure sine: its second harmonic lies on the pulse's first.</summary>
public sealed class SlowPulseTests
{
    private const double RateHz = 100;
    private const int StartSeconds = 12;
    private const double PercentTolerance = 0.4;
    private const double PulseTolerance = 1.5;
    private const double LeastShare = 0.95;
    private const double LeastHeldShare = 0.8;

    [Theory]
    [InlineData(36, 0.29)]
    [InlineData(38, 0.25)]
    [InlineData(41, 0.31)]
    [InlineData(45, 0.3)]
    [InlineData(49, 0.33)]
    public void ASlowPulseIsReadBesideLargeBreathing(double pulsePerMinute, double breathHz)
    {
        (double Infrared, double Red) Breath(double t)
        {
            var light = 0.004 * (Math.Sin(2 * Math.PI * breathHz * t) + (0.25 * Math.Sin((4 * Math.PI * breathHz * t) + 1)));
            return (light, 0.9 * light);
        }

        var finger = new Finger { Seconds = 60, PulsePerMinute = pulsePerMinute, PerfusionPercent = 1, Movement = Breath };
        var heard = Heard.Of(RateHz, finger.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
        var rates = heard.Usable.Select(s => s.PulseRatePerMinute).OfType<double>().ToArray();
        Assert.True(rates.Count(r => Math.Abs(r - pulsePerMinute) <= PulseTolerance) >= LeastShare * rates.Length, string.Join(' ', rates.Select(r => $"{r:F1}")));
        Assert.NotEmpty(heard.Readings);
    }

    // So weak a pulse is a quarter of the breath beside it, a hand in the cold: what the slow part gives back to it is that breath.
    [Theory]
    [InlineData(43, 0.39)]
    [InlineData(48, 0.41)]
    public void AWeakSlowPulseIsReadBesideBreathingManyTimesAsLarge(double pulsePerMinute, double breathHz)
    {
        (double Infrared, double Red) Breath(double t)
        {
            var light = 0.004 * Math.Sin(2 * Math.PI * breathHz * t);
            return (light, 0.52 * light);
        }

        var finger = new Finger { Seconds = 60, PulsePerMinute = pulsePerMinute, PerfusionPercent = 0.25, BreathingPercent = 0, NoisePercent = 0.003, Movement = Breath };
        var heard = Heard.Of(RateHz, finger.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
        Assert.NotEmpty(heard.Readings);
    }

    // What vessels drift by falls with the square of its frequency and reaches the lights in a mixture of its own: under a slow pulse's
    // first wave, and under a faster one where there is more of it.
    [Theory]
    [InlineData(40, 4e-5)]
    [InlineData(48, 4e-5)]
    [InlineData(70, 8e-5)]
    public void APulseIsReadBesideVesselsThatDrift(double pulsePerMinute, double size)
    {
        (double Infrared, double Red) Drift(double t)
        {
            var light = 0.0;
            for (var wave = 0; wave < 30; wave++)
            {
                var hz = 0.3 + (0.077 * wave);
                light += size / (hz * hz) * Math.Sin((2 * Math.PI * hz * t) + (1.7 * wave * wave));
            }

            return (light, 1.2 * light);
        }

        var finger = new Finger { Seconds = 60, PulsePerMinute = pulsePerMinute, PerfusionPercent = 1, BreathingPercent = 0.2, NoisePercent = 0.005, Movement = Drift };
        var heard = Heard.Of(RateHz, finger.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
        Assert.True(heard.Usable.Count(s => s.Spo2!.Value.LowPercent <= 97 && s.Spo2!.Value.HighPercent >= 97) >= LeastHeldShare * heard.Usable.Count());
    }

    // A tall pulse's window holds no whole number of its beats, and the light wanders with them.
    [Fact]
    public void ATallSlowPulseIsNoLeak()
    {
        const double wanderHz = 0.06;
        var finger = new Finger
        {
            Seconds = 60,
            PerfusionPercent = 14,
            BreathingPercent = 1,
            NoisePercent = 0.002,
            Blood = t => 0.5 + ((Finger.Volume(t * 35 / 60) - 0.5) * (1 - (0.15 * Math.Sin((2 * Math.PI * wanderHz * t) + 0.3)))),
            Movement = t => (0.024 * Math.Sin(2 * Math.PI * wanderHz * t), 0.024 * Math.Sin(2 * Math.PI * wanderHz * t)),
        };
        var heard = Heard.Of(RateHz, finger.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
    }

    // A fall that is steeper than the front, but time enough between two beats to show that the light is high for a short time; and
    // second waves that are counted as beats.
    [Theory]
    [InlineData(37, 0.37, 0.7, 0.08)]
    [InlineData(41, 0.33, 0.7, 0.08)]
    [InlineData(38, 0.3, 0.6, 0.1)]
    [InlineData(40, 0.3, 0.6, 0.1)]
    [InlineData(38, 0.3, 0.8, 0.1)]
    [InlineData(42, 0.3, 0.8, 0.1)]
    public void ASlowPulseWhoseSecondWaveIsTallerIsRead(double pulsePerMinute, double delaySeconds, double firstWave, double secondSeconds)
    {
        double Blood(double t)
        {
            var since = t % (60 / pulsePerMinute);
            return (firstWave * Bell(since - 0.15, 0.1)) + Bell(since - 0.15 - delaySeconds, secondSeconds);
        }

        static double Bell(double seconds, double width) => Math.Exp(-0.5 * seconds * seconds / (width * width));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 60, Blood = Blood, BreathingPercent = 0.2 }.Samples());
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.True(settled.Count(s => s.IsUsable) >= LeastShare * settled.Length, string.Join(' ', settled.Where(s => !s.IsUsable).Select(s => $"{s.SecondIndex}: {s.Unusable!.Value.Reasons}")));
        Assert.All(heard.Usable, s => Assert.InRange(s.PulseRatePerMinute ?? pulsePerMinute, 0.9 * pulsePerMinute, 1.1 * pulsePerMinute));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    // With its first wave taken away as baseline, a pulse of 35 with a second wave seems to beat twice as fast, and half as high; seen whole a second
    // later it has not grown.
    [Theory]
    [InlineData(35, 0.33)]
    [InlineData(35.5, 0.42)]
    public void ASlowPulseIsKnownWithAndWithoutItsFirstWave(double pulsePerMinute, double breathHz)
    {
        double Blood(double t)
        {
            var beats = (pulsePerMinute / 60 * t) + (0.02 * Math.Sin(0.7 * t)) + (0.02 * Math.Sin(2.1 * t));
            var turn = 2 * Math.PI * beats;
            return Math.Pow(0.5 + (0.5 * Math.Sin(turn + (0.75 * Math.Sin(turn)))), 1.2) + (0.2 * Math.Exp(9 * (Math.Cos(turn - (2 * Math.PI * 0.52)) - 1)));
        }

        (double Infrared, double Red) Breath(double t)
        {
            var light = 0.006 * Math.Sin((2 * Math.PI * breathHz * t) + (0.6 * Math.Sin(0.2 * t)));
            return (light, 0.9 * light);
        }

        var heard = Heard.Of(100, new Finger { Seconds = 60, Blood = Blood, BreathingPercent = 0, Movement = Breath, Spo2 = _ => 73 }.Samples());
        Assert.InRange(heard.Seconds.Count(s => s.SecondIndex >= 12 && s.IsUsable), 47, 48);
        Assert.All(heard.Usable, s => Assert.Equal(73, s.Spo2!.Value.Percent, 0.6));
    }
}
