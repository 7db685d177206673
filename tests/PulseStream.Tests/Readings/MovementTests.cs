using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A finger that lies still for fifteen seconds and is moved for the next fifteen.</summary>
public sealed class MovementTests
{
    // What a reading in movement may be off, points, and how much of movement as large as the pulse is to be read through.
    private const double LargestErrorPercent = 1.5;
    private const double LeastShareRead = 0.7;
    private const int CalmSeconds = 15;

    [Theory]
    [InlineData(1, 97, 1.1)]
    [InlineData(2, 90, 0.4)]
    [InlineData(3, 82, 0.8)]
    [InlineData(4, 97, 0.0)]
    public void MovementAsLargeAsThePulseIsReadThrough(int seed, double spo2Percent, double motionRatio)
    {
        var moved = Moved(seed, spo2Percent, motionRatio, fromSecond: CalmSeconds);
        var read = moved.Usable.Where(s => s.SecondIndex >= CalmSeconds).ToArray();
        Assert.InRange(read.Length, LeastShareRead * CalmSeconds, CalmSeconds);
        Assert.All(read, s => Assert.Equal(spo2Percent, s.Spo2!.Value.Percent, LargestErrorPercent));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void MovementBeforeThePulseIsKnownIsNeverReadWrong(int seed) =>
        Assert.DoesNotContain(Moved(seed, 90, 0.4, fromSecond: 0).Usable, s => Math.Abs(s.Spo2!.Value.Percent - 90) > LargestErrorPercent);

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.7)]
    [InlineData(1.5)]
    [InlineData(3.0)]
    public void MovementAtThePulsesOwnRateIsNeverReadWrong(double phase)
    {
        // A sine of the pulse's own size and rate, with red moving as much as infrared.
        const double spo2 = 90;
        double At(double t) => t < CalmSeconds ? 0 : 0.01 * Math.Sin((2 * Math.PI * t * 72 / 60) + phase);
        var heard = Heard.Of(100, new Finger { Spo2 = _ => spo2, Movement = t => (At(t), At(t)) }.Samples());
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - spo2) > LargestErrorPercent);
    }

    [Fact]
    public void ASqueezeWithEveryBeatIsNoGrownPulse()
    {
        // Twenty times the pulse, of its rate and with a front like its own, in a mixture that looks like less oxygen.
        const double spo2 = 96;
        double At(double t) => t < CalmSeconds ? 0 : -0.1 * (Finger.Volume((t * 72 / 60) + 0.1) - 0.5);
        var finger = new Finger { Seconds = 40, PerfusionPercent = 0.5, Spo2 = _ => spo2, Movement = t => (At(t), 0.75 * At(t)) };
        var heard = Heard.Of(100, finger.Samples());
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - spo2) > LargestErrorPercent);
    }

    [Theory]
    [InlineData(2, 7)]
    [InlineData(3, 12)]
    [InlineData(4, 12)]
    public void MovementOfOneLightManyTimesThePulseIsReadThroughTheOther(int seed, double fastestHz)
    {
        // For as long as the calm pulse's height is known well enough.
        const double spo2 = 85;
        const int knownSeconds = 7;
        var heard = Heard.Of(100, Shaken(seed, new Finger { Spo2 = _ => spo2 }, 0, CalmSeconds, size: 0.02, fastestHz).Samples());
        var read = heard.Usable.Where(s => s.SecondIndex >= CalmSeconds).ToArray();
        Assert.InRange(read.Length, knownSeconds, CalmSeconds);
        Assert.All(read, s => Assert.Equal(spo2, s.Spo2!.Value.Percent, LargestErrorPercent));
    }

    [Fact]
    public void AnotherFingerIsNotReadByThePulseOfTheOneBefore()
    {
        // Half the pulse's height, moved from its first moment on; the clip was empty in between.
        var first = new Finger().Samples();
        var air = (new Finger { Seconds = 5 }).Air();
        var second = Shaken(3, new Finger { PerfusionPercent = 1, Spo2 = _ => 85 }, 1.1, 0, size: 0.004).Samples();
        var heard = Heard.Of(100, [.. first, .. air, .. second]);
        Assert.DoesNotContain(heard.Usable, s => s.SecondIndex >= 45 && Math.Abs(s.Spo2!.Value.Percent - 85) > LargestErrorPercent);
    }

    private static Heard Moved(int seed, double spo2Percent, double motionRatio, int fromSecond) =>
        Heard.Of(100, Shaken(seed, new Finger { Spo2 = _ => spo2Percent, Seed = seed }, motionRatio, fromSecond, size: 0.007).Samples());

    // Broadband, of a root mean square: a pulse of 2 % has 0.007.
    private static Finger Shaken(int seed, Finger finger, double motionRatio, int fromSecond, double size, double fastestHz = 5.6)
    {
        var random = new Random(seed);
        var waves = Enumerable.Range(0, 40).Select(_ => (Hz: 0.6 + ((fastestHz - 0.6) * random.NextDouble()), Phase: 6.3 * random.NextDouble())).ToArray();
        double At(double t) => t < fromSecond ? 0 : size / Math.Sqrt(20) * waves.Sum(w => Math.Sin((2 * Math.PI * w.Hz * t) + w.Phase));
        return finger with { Movement = t => (At(t), motionRatio * At(t)) };
    }
}
