using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>
/// A finger moves half off and the light may be as bright as before or darker: what it lets go of its own, and what comes
/// past it instead, moves R as far as red's light against infrared's, the other way.
/// </summary>
public sealed class SeatedFingerTests
{
    private const double RateHz = 100;
    private const double InfraredCounts = 80_000;
    private const double RedCounts = 60_000;
    private const double Truth = 91;
    private const int Moved = 30;

    // By a slide of less than a second and of ten: R is off by two to five points then.
    [Theory]
    [InlineData(0.6, 0.52, 0.87, 0.3)]
    [InlineData(0.6, 0.87, 0.52, 0.3)]
    [InlineData(0.7, 0.4, 0.7, 10)]
    [InlineData(0.4, 0.8, 0.45, 10)]
    public void AFingerHalfOffInDarkerLightIsMisplaced(double share, double red, double infrared, double slideSeconds)
    {
        var heard = HalfOff(share, red, infrared, slideSeconds);
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - Truth) > 2);
        Assert.All(Enumerable.Range(Moved + 20, 20), second => Assert.Equal(Reasons.Misplaced, heard.ReasonsAt(second)));
    }

    // A finger that comes back to where it sat is read again.
    [Fact]
    public void AFingerThatComesBackIsReadAgain()
    {
        var heard = Slid(0.6, 0.52, 0.87, t => AddedLight.Ramp(t, Moved, 1) - AddedLight.Ramp(t, Moved + 20, 1));
        Assert.Contains(heard.Usable, s => s.SecondIndex > Moved + 30);
    }

    // Half a point to one and a half: what is not refused is told.
    [Theory]
    [InlineData(0.2, 0.6, 0.9)]
    [InlineData(0.25, 0.9, 0.6)]
    [InlineData(0.15, 0.7, 0.5)]
    public void TheIntervalHoldsWhatALeakMayHaveDone(double share, double red, double infrared)
    {
        var later = HalfOff(share, red, infrared, 8).Usable.Where(s => s.SecondIndex > Moved).Select(s => s.Spo2!.Value).ToArray();
        Assert.True(later.Length > 30);
        Assert.Contains(later, s => Math.Abs(s.Percent - Truth) > 0.4);
        Assert.All(later, s => Assert.InRange(Truth, s.LowPercent - 0.05, s.HighPercent + 0.05));
        Assert.Contains(later, s => s.HighPercent - s.LowPercent < 2);
    }

    // Blood without oxygen darkens red at rest as well, by far less than it moves R.
    [Fact]
    public void AFallOfSaturationThatDarkensRedIsBloods()
    {
        static double Spo2(double t) => 96 - (12 * AddedLight.Ramp(t, Moved, 15));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 80, Spo2 = Spo2, Movement = t => (0, -0.06 * AddedLight.Ramp(t, Moved, 15)) }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex > 15), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable.Where(s => s.SecondIndex > Moved + 30), s => Assert.InRange(s.Spo2!.Value.HighPercent - s.Spo2.Value.LowPercent, 0, 1));
    }

    // A pad that softens moves the light and leaves R; blood that falls when the light has come to rest is blood.
    [Fact]
    public void LightThatMovesWhileRStaysIsTheFingersOwn()
    {
        static double Spo2(double t) => 93 - (2 * AddedLight.Ramp(t, 110, 10));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 150, Spo2 = Spo2, Movement = t => (0, -0.1 * AddedLight.Ramp(t, 20, 20)) }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex > 15), s => Assert.True(s.IsUsable, $"{s.SecondIndex}"));
        Assert.All(heard.Usable.Where(s => s.SecondIndex > 130), s => Assert.InRange(s.Spo2!.Value.HighPercent - s.Spo2.Value.LowPercent, 0, 0.3));
    }

    // Darkened by a movement that has the mixture of blood, the light says nothing of where it comes back to.
    [Theory]
    [InlineData(0.09, 0.02, 0)]
    [InlineData(0.02, 0.02, 0.12)]
    [InlineData(0.09, 0.05, 0)]
    public void JerkedLightIsNotFollowed(double levelSwing, double size, double rise)
    {
        var light = new CalmLight(new());
        var calm = new SignalSecond(
            20,
            new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.02, 1e-4),
            new RatioFit(8, 0.6, 0.001, 0, 0.02, 1e-4, false, 0, 0, false, 0, default),
            default,
            false);
        light.Settle(calm);
        light.Follow(calm with { Light = calm.Light with { InfraredCounts = 80_000 * Math.Exp(-0.12), RedCounts = 60_000 * Math.Exp(-0.08), LevelSwing = levelSwing }, Fit = calm.Fit with { PulseSize = size } }, pulseSize: 0.02);
        Assert.Equal(rise, light.RiseOf(calm), 0.005);
    }

    // A second without a sample has no light; a leak is told all the same by those around it.
    [Fact]
    public void ASecondWithoutLightIsNoLeakAndHidesNone()
    {
        var light = new CalmLight(new());
        var seat = new SeatedFinger(new(), light);
        See(light, At(0, 0));
        seat.Remember(At(0, 0));
        light.See(At(double.NaN, 0) with { Light = new(1, 0, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, 1e-4) });
        Assert.False(seat.HasLeaked(At(0, 0)));
        Assert.Equal(0, seat.LeakedRatio(At(0, 0.001)));
        seat.Remember(At(0, 0));
        See(light, At(0.2, 0));
        light.See(At(double.NaN, 0) with { Light = new(1, 0, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, 1e-4) });
        Assert.True(seat.HasLeaked(At(0.2, -0.2)));
    }

    // Where R has moved by another amount than the lights, a finger that was put down anew may have other blood by now.
    [Theory]
    [InlineData(0.2, -0.2, true)]
    [InlineData(-0.2, 0.2, true)]
    [InlineData(0.2, -0.1, false)]
    [InlineData(0.2, 0.2, false)]
    [InlineData(0.03, -0.2, false)]
    [InlineData(0.04, -0.04, false)]
    public void OnlyWhatMovesRAndTheLightsAlikeIsALeak(double lights, double ratio, bool isLeak)
    {
        Assert.Equal(isLeak, SeatSeenBefore(lights, ratio, out var later).HasLeaked(later));
    }

    // Known to a fifth of a point, and moved by no more, R tells for itself that nothing has moved it; lights that have hardly moved
    // against one another tell as much.
    [Theory]
    [InlineData(0.1, 0.001, 0, true)]
    [InlineData(0.1, 0.001, -0.008, true)]
    [InlineData(0.1, 0.001, -0.02, false)]
    [InlineData(0.1, 0.01, 0, false)]
    [InlineData(0.01, 0.01, -0.05, true)]
    [InlineData(0.02, 0.01, -0.05, false)]
    public void AFingerWhoseRWasNotMovedIsUnharmed(double lights, double standardError, double ratio, bool isUnharmed)
    {
        var seat = SeatSeenBefore(lights, ratio, out var later);
        Assert.Equal(isUnharmed, seat.IsUnharmed(later with { Fit = later.Fit with { StandardError = standardError } }));
    }

    // A finger held differently each minute: light comes and goes by a sixth, and the pulse by a tenth, while R stays; a deep
    // breath moves it from second to second.
    [Theory]
    [InlineData(0)]
    [InlineData(0.02)]
    public void AFingerWhoseLightDriftsByFarMoreThanItsPulseIsRead(double breath)
    {
        double Light(double t) => (0.08 * Math.Cos(0.1 * t)) + (breath * Math.Sin(2 * Math.PI * 0.22 * t));
        var finger = new Finger
        {
            Seconds = 90,
            PerfusionPercent = 4,
            Spo2 = _ => Truth,
            Blood = t => (1 - (0.1 * Math.Cos(0.1 * t))) * Finger.Volume(80 * t / 60),
            Movement = t => (Light(t), 0.95 * Light(t)),
        };
        var heard = Heard.Of(RateHz, finger.Samples());
        Assert.True(heard.Usable.Count(s => s.SecondIndex > 15) >= 70, string.Join(" ", Enumerable.Range(15, 75).Select(k => $"{k}:{heard.ReasonsAt(k)}")));
        Assert.All(heard.Usable, s => Assert.InRange(s.Spo2!.Value.Percent, Truth - 0.5, Truth + 0.5));
    }

    // A finger that sat, and whose lights against one another and R have moved by so much since.
    private static SeatedFinger SeatSeenBefore(double lights, double ratio, out SignalSecond later)
    {
        var light = new CalmLight(new());
        var seat = new SeatedFinger(new(), light);
        See(light, At(0, 0));
        seat.Remember(At(0, 0));
        later = At(lights, ratio);
        See(light, later);
        return seat;
    }

    private static void See(CalmLight light, SignalSecond second)
    {
        for (var k = 0; k < 8; k++)
        {
            light.See(second);
        }
    }

    private static SignalSecond At(double lights, double ratio)
    {
        var light = new SecondLight(0, 0, InfraredCounts, RedCounts * Math.Exp(lights), double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        var fit = new RatioFit(8, 0.8 * Math.Exp(ratio), 0.001, 0, 0.007, 1e-4, false, 0, 0, false, 0, default);
        return new(10, light, fit, default, false);
    }

    // The same bit by bit: both lights brighten or darken alike, the pulse shrinks by a third and more, and R follows by two to four points.
    [Theory]
    [InlineData(75, 1.59, 0.54, 0.5)]
    [InlineData(76, 1.58, 0.39, 0.32)]
    [InlineData(82, 0.8, 0.52, 0.45)]
    public void LightThatCreepsPastAndHidesWhatItDoesToRIsMisplaced(double truth, double brighter, double red, double infrared)
    {
        var seated = new Finger { Seconds = 80, PulsePerMinute = 90, Spo2 = _ => truth }.Samples();
        var heard = Heard.Of(RateHz, [.. seated.Select((sample, n) =>
        {
            var away = AddedLight.Ramp(n / RateHz, Moved, 15);
            var gain = 1 + ((brighter - 1) * away);
            return (Sample?)Sample.OfLight(
                gain * ((sample!.Value.Red * (1 - (red * away))) + (RedCounts * red * away)),
                gain * ((sample.Value.Infrared * (1 - (infrared * away))) + (InfraredCounts * infrared * away)));
        })]);
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - truth) > 2.2);
        Assert.All(heard.Seconds.Where(s => s.SecondIndex > Moved + 20), s => Assert.Equal(Reasons.Misplaced, s.Unusable?.Reasons & Reasons.Misplaced));
    }

    // Light comes past evenly, by a fifteenth and by a third, and R leaps by five points: blood that loses oxygen makes red's pulse grow, blood that
    // takes it up leaves infrared's. What comes past takes from both.
    [Theory]
    [InlineData(0.07, 0.06, 0.22, false)]
    [InlineData(0.07, 0.06, -0.22, false)]
    [InlineData(0.35, 1, -0.3, true)]
    [InlineData(0.35, 1, 0.3, true)]
    public void BloodThatChangesFastInBrighterLightIsNoLeak(double rise, double shrink, double ratio, bool isLeak)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var seated = At(0, 0);
        calm.See(seated);
        calm.Tell(seated);
        calm.Remember(seated);
        var later = At(0, ratio) with { SecondIndex = 20 };
        later = later with
        {
            Light = later.Light with { InfraredCounts = InfraredCounts * Math.Exp(rise), RedCounts = RedCounts * Math.Exp(rise) },
            Fit = later.Fit with { PulseSize = later.Fit.PulseSize * Math.Exp(-shrink) },
        };
        for (var k = 0; k < 8; k++)
        {
            calm.See(later);
        }

        Assert.Equal(isLeak ? Reasons.Misplaced : Reasons.None, calm.ReasonsOf(later) & Reasons.Misplaced);
    }

    // Both lights brighten by the same share while less of red's comes through the finger than of infrared's: nothing but R's own leap tells.
    [Fact]
    public void LightThatHidesWhatItDoesToRIsMisplaced()
    {
        const double truth = 73, brighter = 1.45, red = 0.71, infrared = 0.62;
        var seated = new Finger { Seconds = 60, PulsePerMinute = 74, Spo2 = _ => truth }.Samples();
        var heard = Heard.Of(RateHz, [.. seated.Select((sample, n) => n < Moved * RateHz
            ? sample
            : Sample.OfLight(
                brighter * ((sample!.Value.Red * (1 - red)) + (RedCounts * red)),
                brighter * ((sample.Value.Infrared * (1 - infrared)) + (InfraredCounts * infrared))))]);
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - truth) > 2);
    }

    private static Heard HalfOff(double share, double red, double infrared, double slideSeconds) =>
        Slid(share, red, infrared, t => AddedLight.Ramp(t, Moved, slideSeconds));

    // The finger lets a share of its own light go, and of the emitters' comes so much past as of a finger's.
    private static Heard Slid(double share, double red, double infrared, Func<double, double> away)
    {
        var seated = new Finger { Seconds = 80, PulsePerMinute = 80, Spo2 = _ => Truth }.Samples();
        return Heard.Of(RateHz, [.. seated.Select((sample, n) =>
        {
            var off = share * away(n / RateHz);
            return (Sample?)Sample.OfLight(
                (sample!.Value.Red * (1 - off)) + (RedCounts * red * off),
                (sample.Value.Infrared * (1 - off)) + (InfraredCounts * infrared * off));
        })]);
    }
}
