using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Strong second waves while the heart follows the breath, and overtones of things that do not live.</summary>
public sealed class TwoWavedPulseTests
{
    private const double RateHz = 100;
    private const double PercentTolerance = 0.3;
    private const int StartSeconds = 15;

    // Two bells a beat. Breath by breath the rate goes up and down by a tenth, so that the window hardly repeats: the beats are alike
    // all the same, overtones and all.
    [Theory]
    [InlineData(58, 0.7, 0.37)]
    [InlineData(66, 0.69, 0.39)]
    [InlineData(78, 0.75, 0.4)]
    [InlineData(86, 0.8, 0.4)]
    public void ATwoWavedPulseThatFollowsTheBreathIsRead(double pulsePerMinute, double height, double delayShare)
    {
        var heard = Heard.Of(RateHz, new Finger { Seconds = 60, Blood = Blood }.Samples());
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.InRange(settled.Count(s => s.IsUsable) / (double)settled.Length, 0.9, 1);
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));

        double Blood(double t)
        {
            var beats = (pulsePerMinute / 60 * t) + (0.08 * Math.Sin(2 * Math.PI * 0.22 * t));
            var phase = beats - Math.Floor(beats);
            return Bell(phase, 0.19, 0.075) + (height * Bell(phase, 0.19 + delayShare, 0.115));
        }
    }

    // A narrow second wave, a third as high as the front, 0.4 s behind each of 57 a minute: breath by breath the interval changes by a
    // twentieth either way, and the wave keeps its time.
    [Fact]
    public void ASecondWaveThatKeepsItsTimeIsNoBeatHoweverNarrow()
    {
        List<double> fronts = [-2];
        while (fronts[^1] < 62)
        {
            fronts.Add(fronts[^1] + (1.05 * (1 + (0.05 * Math.Sin(Math.PI / 2 * fronts[^1])))));
        }

        var heard = Heard.Of(RateHz, new Finger { Seconds = 60, Blood = Blood }.Samples());
        var settled = heard.Usable.Where(s => s.SecondIndex >= 30).ToArray();
        Assert.True(settled.Length >= 27);
        Assert.All(settled, s => Assert.InRange(s.PulseRatePerMinute ?? double.NaN, 54, 60));

        double Blood(double t) => fronts.Where(f => Math.Abs(f - t) < 1.5).Sum(f => Bell(t - f, 0, 0.05) + (0.33 * Bell(t - f, 0.4, 0.05)));
    }

    // Two hundred beats a minute with a wave behind each that is nearly as high go up and down as fast as shaking does.
    // A quarter of the windows may be refused: jitter takes the beats' agreement just below the 0.95 that vouches for them.
    [Fact]
    public void AFastTwoWavedPulseIsRead()
    {
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, Blood = Blood }.Samples());
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.InRange(settled.Count(s => s.IsUsable) / (double)settled.Length, 0.75, 1);
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));

        double Blood(double t)
        {
            // No heart beats evenly.
            var beats = (200 * t / 60) + (0.05 * Math.Sin(2 * Math.PI * 0.31 * t)) + (0.03 * Math.Sin(2 * Math.PI * 0.83 * t));
            var phase = beats - Math.Floor(beats);
            return Bell(phase, 0.18, 0.075) + (0.76 * Bell(phase, 0.6, 0.115));
        }
    }

    // Light of a lamp in an empty clip that leaps up and dies away: blood that would go at once and come slowly.
    [Theory]
    [InlineData(1.24, 0.03)]
    [InlineData(0.95, 0.03)]
    [InlineData(1.05, 0.003)]
    public void ALampThatLeapsUpAndDiesAwayIsNoFinger(double hz, double size) =>
        Assert.Empty(Lifeless(t => -size * Math.Exp(-4 * ((hz * t) - Math.Floor(hz * t))), 0.6).Usable);

    // Light that is on for as long as off. It comes in another mixture than the finger had that was there.
    [Fact]
    public void ALampThatIsSwitchedOnAndOffIsNoReading()
    {
        const double change = 25;
        static double Lamp(double t) => 0.01 * (0.5 + (0.5 * Math.Tanh(6 * Math.Sin(2 * Math.PI * 2.08 * t))));
        var finger = new Finger { Seconds = 70, Spo2 = _ => 80 }.Samples();
        var lamp = new Finger { Seconds = 70, PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (Lamp(t), 1.04 * Lamp(t)) }.Samples();
        var heard = Heard.Of(RateHz, [.. finger[..(int)(change * RateHz)], .. lamp[(int)(change * RateHz)..]]);
        Assert.DoesNotContain(heard.Readings, r => r.SecondIndex > change);
    }

    // Something hard in the clip that is tapped and rings: up and down alike, and for a tenth of the time.
    [Theory]
    [InlineData(1.3, 3.5, 0.08)]
    [InlineData(1.7, 4, 0.06)]
    public void SomethingThatIsTappedIsNoReading(double hz, double ringHz, double dyingSeconds)
    {
        Assert.Empty(Lifeless(Ring, 0.8).Readings);

        double Ring(double t)
        {
            // Taps come some hundredths of an interval early and late, as a hand's do.
            var beats = (hz * t) + (0.03 * Math.Sin(2 * Math.PI * 0.41 * t)) + (0.02 * Math.Sin(2 * Math.PI * 0.17 * t));
            var since = (beats - Math.Floor(beats)) / hz;
            return 0.01 * Math.Exp(-since / dyingSeconds) * Math.Sin(2 * Math.PI * ringHz * since);
        }
    }

    private static double Bell(double phase, double at, double width) => Math.Exp(-0.5 * (phase - at) * (phase - at) / (width * width));

    private static Heard Lifeless(Func<double, double> wave, double ratio) =>
        Heard.Of(RateHz, new Finger { Seconds = 60, PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (-wave(t), -ratio * wave(t)) }.Samples());
}
