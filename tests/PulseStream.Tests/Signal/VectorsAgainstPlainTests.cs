using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Two lights at once give to the last bit what one after the other gives (<see cref="PlainSums"/>).</summary>
public sealed class VectorsAgainstPlainTests
{
    // Largest difference in units in the last place: both are within one of the true value.
    private const int LogarithmUnits = 2;
    private static readonly SignalDesign Design = new(new SampleRate(100), new());

    [Theory]
    [InlineData(50)]
    [InlineData(100)]
    [InlineData(250)]
    public void SmoothingIsThePlainSum(double hz)
    {
        var kernel = new SignalDesign(new SampleRate(hz), new()).Kernel;
        var (infrared, red) = Lights(kernel.Taps.Length);
        var smooth = kernel.Smooth(Pairs(infrared, red));
        Assert.Equal(PlainSums.Smooth(kernel.Taps, infrared), smooth[0]);
        Assert.Equal(PlainSums.Smooth(kernel.Taps, red), smooth[1]);
    }

    [Theory]
    [InlineData(4, 40)]
    [InlineData(7, 70)]
    [InlineData(8, 40)]
    [InlineData(8, 70)]
    [InlineData(8, 160)]
    public void TheSlowPartIsThePlainOne(int seconds, double pulsePerMinute)
    {
        var basis = Design.SlowOf(seconds, Design.EdgeOf(pulsePerMinute));
        var (infrared, red) = Lights(basis.Length);
        var pairs = Pairs(infrared, red);
        basis.Remove(MemoryMarshal.Cast<Vector128<double>, double>(pairs.AsSpan()));
        PlainSums.RemoveSlow(basis, infrared);
        PlainSums.RemoveSlow(basis, red);
        Assert.Equal(infrared, pairs.Select(pair => pair[0]));
        Assert.Equal(red, pairs.Select(pair => pair[1]));
    }

    [Theory]
    [InlineData(388)]
    [InlineData(389)]
    public void TheRegressionHasThePlainSums(int bins)
    {
        var (infrared, red) = Lights(bins);
        Assert.Equal(PlainSums.RatioSumsOver(infrared, red), RatioSums.Over(MemoryMarshal.Cast<Vector128<double>, double>(Pairs(infrared, red))));
    }

    [Theory]
    [InlineData(388)]
    [InlineData(389)]
    public void TheWaveHasThePlainShape(int bins)
    {
        const int edge = 11;
        const double noise = 0.01;
        var (infrared, red) = Lights(bins);
        Assert.Equal(PlainSums.WaveShapeOf(infrared, noise, edge), WaveShape.Of(CourseOf(infrared, red), noise, 50));
    }

    [Theory]
    [InlineData(40, 40, 40)]
    [InlineData(41, 37, 39)]
    [InlineData(12, 45, 45)]
    [InlineData(7, 8, 40)]
    public void BeatsAreAsLikeAsThePlainOnes(params int[] lengths)
    {
        var beats = lengths.Select((length, seed) => Lights(length + (1000 * seed)).Red[..length]).ToArray();
        var likeness = new BeatLikeness(64);
        likeness.Clear(64);
        foreach (var beat in beats)
        {
            likeness.Add(beat);
        }

        likeness.Weigh();
        for (var k = 0; k < beats.Length; k++)
        {
            Assert.Equal(PlainSums.Likeness(beats, k), likeness.Of(beats[k]));
        }
    }

    [Theory]
    [InlineData(388)]
    [InlineData(389)]
    public void SlopesAndVolumesArePlain(int bins)
    {
        var (infrared, red) = Lights(bins);
        var course = CourseOf(infrared, red);
        Assert.Equal(infrared.Select(light => -light), course.Volumes.ToArray());
        Assert.Equal(Enumerable.Range(0, bins).Select(n => n == 0 || n == bins - 1 ? 0 : infrared[n - 1] - infrared[n + 1]), course.Slopes.ToArray());
    }

    [Theory]
    [InlineData(0.4)]
    [InlineData(0.9)]
    [InlineData(1.6)]
    public void TheWindowRepeatsAsInThePlainSum(double periodSeconds)
    {
        // The sum is taken in another order: so far apart the last digits may be.
        const double tolerance = 1e-9;
        var repetition = new Repetition(Design);
        var infrared = Enumerable.Range(0, 388).Select(n => Math.Sin(Math.Tau * n / 50 / periodSeconds)).ToArray();
        var lights = Lights(388);
        repetition.Find(CourseOf(infrared, lights.Red).Volumes);
        Assert.Equal(periodSeconds, repetition.PeriodSeconds, 0.01);
        var stride = 3;
        var lag = (int)Math.Round(periodSeconds * 50 / stride);
        var values = Enumerable.Range(lag - 2, 5).Select(k => PlainSums.Autocorrelation(infrared, stride, k)).ToArray();
        var top = values.AsSpan().IndexOf(values.Max());
        Assert.Equal(Parabola.HeightNear(values, top), repetition.Periodicity, tolerance);
    }

    // Pulses of two kinds in turn, 2.2 s from one to the next of its kind; the shortest repetition is another.
    [Fact]
    public void ARepetitionSlowerThanAnyPulseIsFoundWhenAskedFor()
    {
        const double periodSeconds = 2.2;
        var repetition = new Repetition(Design);
        var infrared = Enumerable.Range(0, 388).Select(n => Math.Pow(Math.Cos(Math.PI * n / 50 / periodSeconds), 40)).ToArray();
        repetition.Find(CourseOf(infrared, Lights(388).Red).Volumes);
        Assert.False(repetition.PeriodSeconds > 1.8);
        var (period, periodicity) = repetition.FindLonger();
        Assert.Equal(periodSeconds, period, 0.02);
        Assert.InRange(periodicity, 0.8, 1.01);
    }

    // What a longer window before it has left is not looked at.
    [Fact]
    public void AShorterWindowRepeatsAsIfItWereTheFirst()
    {
        var (used, fresh) = (new Repetition(Design), new Repetition(Design));
        var (infrared, red) = Lights(388);
        used.Find(CourseOf(infrared, red).Volumes);
        used.Find(CourseOf(infrared[..188], red[..188]).Volumes);
        fresh.Find(CourseOf(infrared[..188], red[..188]).Volumes);
        Assert.Equal(fresh.Periodicity, used.Periodicity);
        Assert.Equal(fresh.PeriodSeconds, used.PeriodSeconds);
    }

    [Theory]
    [InlineData(0.002)]
    [InlineData(0.02)]
    [InlineData(0.015)]
    public void LeapsAreFoundAsWhereEveryPlaceIsLookedAt(double stillness)
    {
        var found = 0;
        for (var seed = 1; seed < 300; seed++)
        {
            var (infrared, red) = Steps(seed, stillness);
            var plain = PlainSums.LeapIn(infrared, red, 6, 15, 0.01);
            Assert.Equal(plain, LightLeap.LargestIn(MemoryMarshal.Cast<Vector128<double>, double>(Pairs(infrared, red)), 50, (0.01, 0.01)));
            found += plain != 0 ? 1 : 0;
        }

        Assert.InRange(found, 10, 298);
    }

    [Theory]
    [InlineData(0.002)]
    [InlineData(0.02)]
    public void LeapsBesideThePulseAreFoundAsWhereEveryPlaceIsLookedAt(double stillness)
    {
        var found = 0;
        for (var seed = 1; seed < 300; seed++)
        {
            var (infrared, red) = Steps(seed, stillness);
            var plain = PlainSums.LeapBesidePulse(infrared, red, 0.8, 6, 50, 15, 0.003);
            Assert.Equal(plain, LightLeap.LargestBesidePulse(MemoryMarshal.Cast<Vector128<double>, double>(Pairs(infrared, red).AsSpan()), 50, 0.8, 0.003));
            found += plain != 0 ? 1 : 0;
        }

        Assert.InRange(found, 10, 298);
    }

    [Theory]
    [InlineData(33.3)]
    [InlineData(71.25)]
    public void TheThirdWaveIsThatOfFourierSums(double period)
    {
        const double rounding = 1e-11;
        var (infrared, _) = Lights(388);
        var rises = Enumerable.Range(0, 12).Select(k => 5.2 + (k * period) + (3 * Math.Sin(k))).Where(rise => rise < 380).ToArray();
        Assert.Equal(PlainSums.ThirdWaveShare(infrared, rises), ThirdWave.ShareOf(infrared, rises), rounding);
    }

    [Fact]
    public void RisesAreNormalBesideTheSameOnesAsInAPlainSearch()
    {
        const double near = 250;
        var (slopes, _) = Lights(388);
        slopes = [.. slopes.Select(Math.Abs)];
        var steepness = new RiseSteepness(near);
        foreach (var step in (double[])[17, 31.5, 300])
        {
            var rises = Enumerable.Range(0, 23).Select(k => 3 + (k * step)).Where(rise => rise < 388).ToArray();
            steepness.Find(slopes, rises);
            Assert.All(Enumerable.Range(0, rises.Length), k => Assert.Equal(slopes[(int)rises[k]], steepness.Of(k)));
            Assert.All(Enumerable.Range(0, rises.Length), k => Assert.Equal(PlainSums.NormalSteepness(slopes, rises, k, near), steepness.NormalAbout(k)));
        }
    }

    [Theory]
    [InlineData(20, 33, 55, 12)]
    [InlineData(20.5, 33.25, 55.5, 12.5)]
    [InlineData(5, 6, 7, 40)]
    public void ARiseComesFromThePlainFoot(double strong, double weak, double next, double reach)
    {
        var (slopes, _) = Lights(60);
        Assert.Equal(PlainSums.FootShare(slopes, strong, weak, next, reach), RiseFoot.ShareOf(slopes, strong, weak, next, reach));
    }

    [Fact]
    public void TheLogarithmIsThatOfTheRuntime()
    {
        var random = new Random(1);
        for (var n = 0; n < 100_000; n++)
        {
            // From one count to the product of sixteen lights.
            var light = Math.Exp(660 * random.NextDouble());
            var other = 1 + random.NextDouble();
            var found = NaturalLogarithm.Of(Vector128.Create(light, other));
            Assert.InRange(found[0], Down(Math.Log(light)), Up(Math.Log(light)));
            Assert.InRange(found[1], Down(Math.Log(other)), Up(Math.Log(other)));
        }

        Assert.Equal(0, NaturalLogarithm.Of(Vector128<double>.One)[0]);
        Assert.True(double.IsNaN(NaturalLogarithm.Of(Vector128.Create(double.NaN))[1]));
    }

    private static double Up(double x) => Enumerable.Range(0, LogarithmUnits).Aggregate(x, (y, _) => Math.BitIncrement(y));

    private static double Down(double x) => Enumerable.Range(0, LogarithmUnits).Aggregate(x, (y, _) => Math.BitDecrement(y));

    private static (double[] Infrared, double[] Red) Lights(int length)
    {
        var random = new Random(length);
        return ([.. Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.3)], [.. Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.6)]);
    }

    // Two lights that step up or down together, or one against the other, and are as still as told before and after.
    private static (double[] Infrared, double[] Red) Steps(int seed, double stillness)
    {
        var random = new Random(seed);
        var (at, bins) = (30 + random.Next(40), 1 + random.Next(12));
        double inInfrared = 0.2 * (random.NextDouble() - 0.5), inRed = 0.2 * (random.NextDouble() - 0.5);
        var course = Enumerable.Range(0, 92).Select(n => Math.Clamp((n - at) / (double)bins, 0, 1)).ToArray();
        return ([.. course.Select(x => 11 + (inInfrared * x) + Noise())], [.. course.Select(x => 12 + (inRed * x) + Noise())]);

        double Noise() => stillness * (random.NextDouble() - 0.5);
    }

    private static BloodCourse CourseOf(double[] infrared, double[] red)
    {
        var course = new BloodCourse(infrared.Length + 1);
        course.Take(MemoryMarshal.Cast<Vector128<double>, double>(Pairs(infrared, red)));
        return course;
    }

    private static Vector128<double>[] Pairs(double[] infrared, double[] red) => [.. infrared.Zip(red, Vector128.Create)];
}
