using PulseStream.Readings;
using PulseStream.Samples;
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

    // What has not shown for sure that it is alive was believed all the same, and can be told from movement.
    [Fact]
    public void MovementOfAFingerThatIsNotProvenIsReadThrough()
    {
        var options = new ReadingOptions { Judge = new() { Liveness = new() { ProvingLifeSeconds = 99, ProvingBreathSeconds = 99 } } };
        var heard = new Heard();
        var reader = new FingerReader(new("test", new SampleRate(100), SampleColumns.Red | SampleColumns.Infrared, null), CalibrationCurve.TextbookLine, options);
        reader.Read(new(0, Shaken(2, new Finger { Spo2 = _ => 90 }, 0.4, CalmSeconds, size: 0.007).Samples().Select(s => s!.Value).ToArray()), heard);
        reader.Finish(heard);
        var read = heard.Usable.Where(s => s.SecondIndex >= CalmSeconds).ToArray();
        Assert.InRange(read.Length, LeastShareRead * CalmSeconds, CalmSeconds);
        Assert.All(read, s => Assert.Equal(90, s.Spo2!.Value.Percent, LargestErrorPercent));
    }

    // A fifth of the pulse each, in proportions that no mixture of the lights takes away both.
    [Fact]
    public void TwoMovementsAtOnceAreReadThrough()
    {
        const double spo2 = 90;
        const double leastShareRead = 0.4;
        var read = new List<double>();
        for (var seed = 1; seed <= 24; seed++)
        {
            var one = Shaken(seed, new Finger(), 0.3, CalmSeconds, size: 0.0014).Movement;
            var other = Shaken(seed + 50, new Finger(), 1.6, CalmSeconds, size: 0.0014).Movement;
            var finger = new Finger { Spo2 = _ => spo2, Seed = seed, Movement = t => (one(t).Infrared + other(t).Infrared, one(t).Red + other(t).Red) };
            read.AddRange(Heard.Of(100, finger.Samples()).Usable.Where(s => s.SecondIndex >= CalmSeconds).Select(s => Math.Abs(s.Spo2!.Value.Percent - spo2)));
        }

        read.Sort();
        Assert.InRange(read.Count, leastShareRead * 24 * CalmSeconds, 24 * CalmSeconds);
        Assert.InRange(read[(int)(0.95 * read.Count)], 0, LargestErrorPercent);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void MovementBeforeThePulseIsKnownIsNeverReadWrong(int seed) =>
        Assert.DoesNotContain(Moved(seed, 90, 0.4, fromSecond: 0).Usable, s => Math.Abs(s.Spo2!.Value.Percent - 90) > LargestErrorPercent);

    // Nine times the pulse, regular enough for one, in nearly the pulse's own mixture: the lights disagree by less than a
    // hundredth, and where that is taken away as a line it is the pulse that goes.
    [Theory]
    [InlineData(1.15, -1.2, 0.78, 62)]
    [InlineData(1.0, -1.6, 0.77, 80)]
    public void AShakenHandFromTheStartIsNotATallPulse(double hz, double overtonePhase, double motionRatio, double pulsePerMinute)
    {
        const double spo2 = 93;
        double At(double t)
        {
            var turn = 2 * Math.PI * ((hz * t) + (0.03 * Math.Sin(0.9 * t)));
            return -0.045 * (1 + (0.1 * Math.Sin(0.7 * t))) * (Math.Sin(turn) + (0.35 * Math.Sin((2 * turn) + overtonePhase)) + (0.03 * Math.Sin(3 * turn)));
        }

        var finger = new Finger { Seconds = 40, PerfusionPercent = 1.5, PulsePerMinute = pulsePerMinute, Spo2 = _ => spo2, Movement = t => (At(t), motionRatio * At(t)) };
        Assert.DoesNotContain(Heard.Of(100, finger.Samples()).Usable, s => Math.Abs(s.Spo2!.Value.Percent - spo2) > LargestErrorPercent);
    }

    // Half a minute on the stairs: nine points lower, faster and with a blunter front, and the clip never left the finger.
    [Fact]
    public void AFingerThatLostOxygenWhileItMovedIsReadAgain()
    {
        const double begin = 20;
        const double end = 50;
        static double Blood(double t) => t < end ? Finger.Volume(1.2 * t) : Blunt(1.8 * t);
        static double Blunt(double turns) => 0.5 - (0.4 * (Math.Cos(2 * Math.PI * turns) + (0.35 * Math.Cos((4 * Math.PI * turns) - 0.9)) + (0.06 * Math.Cos(6 * Math.PI * turns))));
        static (double, double) Stairs(double t) => t is < begin or >= end ? default : (0.05 * Math.Sin(11 * t) * Math.Sin(1.3 * t * t / 40), 0.04 * Math.Sin((9 * t) + 1) * Math.Sin(3.1 * t));
        var heard = Heard.Of(100, new Finger { Seconds = 80, Blood = Blood, Spo2 = t => t < 35 ? 97 : 88, Movement = Stairs }.Samples());
        var after = heard.Usable.Where(s => s.SecondIndex >= end + 8).ToArray();
        Assert.InRange(after.Length, 20, 22);
        Assert.All(after, s => Assert.Equal(88, s.Spo2!.Value.Percent, LargestErrorPercent));
    }

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

    // Half of the standard error with which a second is refused.
    [Fact]
    public void TheFirstSecondsOfAMovementAreReadNearlyAsTheCalmOnes()
    {
        const double spo2 = 85;
        var largestScatterPercent = new JudgeOptions().LargestSeparatedErrorPercent / 2;
        var squares = new List<double>();
        for (var seed = 1; seed <= 12; seed++)
        {
            var heard = Heard.Of(100, Shaken(seed, new Finger { Spo2 = _ => spo2, Seed = seed, Seconds = 25 }, 0, CalmSeconds, size: 0.012).Samples());
            squares.AddRange(heard.Usable.Where(s => s.SecondIndex is >= CalmSeconds + 2 and < CalmSeconds + 6).Select(s => Math.Pow(s.Spo2!.Value.Percent - spo2, 2)));
        }

        Assert.InRange(Math.Sqrt(squares.Average()), 0, largestScatterPercent);
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
