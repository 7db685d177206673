using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Tests.Readings;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>A pulse of one height, learned in eight calm seconds, in eight others that something moves in.</summary>
public sealed class MotionSeparationTests
{
    private const int RateHz = 50;
    private const double PeriodBins = 40.7;
    private const double Ratio = 0.6;

    // No converter is free of noise.
    private const double NoiseShare = 1e-3;
    private static readonly SignalDesign Design = new(new SampleRate(RateHz), new());
    private static readonly SlowBasis Basis = Design.SlowOf(Design.Options.LongestWindowSeconds, SlowEdge.OfFastPulse);

    [Fact]
    public void OneMovementManyTimesThePulseIsTakenAwayWhole()
    {
        var shaken = Broad(seed: 1);
        var separated = Separate(t => (3 * shaken(t), 3 * 1.4 * shaken(t)))!.Value;
        Assert.Equal(Ratio, separated.Ratio, Design.Options.HeightSpread * 2);
    }

    // A third of the pulse each, on their own: what no mixture of the two lights takes away.
    [Fact]
    public void TwoMovementsAreOffByAsMuchAsIsTold()
    {
        const double size = 0.33;
        var scores = new List<double>();
        for (var seed = 1; seed <= 40; seed++)
        {
            var first = Broad(seed);
            var second = Broad(seed + 100);
            if (Separate(t => (size * (first(t) + second(t)), size * ((0.3 * first(t)) + (1.5 * second(t))))) is { } separated)
            {
                scores.Add((separated.Ratio - Ratio) / separated.StandardError);
            }
        }

        Assert.InRange(scores.Count, 20, 40);
        // One, but for the chance of some thirty scores and of errors that are themselves known from eight seconds.
        Assert.InRange(Math.Sqrt(scores.Average(z => z * z)), 0.6, 1.4);
    }

    // Of two harmonics, in two proportions that no mixture takes away both: the pulse's other harmonics tell what it is, or nothing does.
    [Theory]
    [InlineData(0.2)]
    [InlineData(1.3)]
    [InlineData(2.7)]
    [InlineData(4.1)]
    public void WhatKeepsTimeWithTheHeartIsNotTakenForItsPulse(double phase)
    {
        const double size = 0.2;
        static double Wave(double t, int harmonic, double at) => Math.Sin((2 * Math.PI * harmonic * t * RateHz / PeriodBins) + at);
        var other = Broad(seed: 5);
        var separated = Separate(t =>
        {
            var first = size * Wave(t, 1, phase);
            var second = size * Wave(t, 2, 1.7 * phase);
            var noise = 0.05 * other(t);
            return (first + second + noise, (1.5 * first) - (0.5 * second) - noise);
        });
        Assert.True(separated is not { } told || Math.Abs(told.Ratio - Ratio) < 3 * told.StandardError, $"{separated}");
    }

    // Half as high as the pulse, of its rate and phase, and something else besides: what would be taken for the pulse's own height.
    [Fact]
    public void APulseFarHigherThanTheCalmOneIsNotToldForSure()
    {
        const double size = 0.35;
        const double beside = 0.1;
        const double front = 0.1;
        var other = Broad(seed: 3);
        var separated = Separate(t =>
        {
            var first = -size * Finger.Volume((t * RateHz / PeriodBins) - front);
            return (first + (beside * other(t)), (1.5 * first) - (beside * other(t)));
        });
        var unsure = new JudgeOptions().LargestSeparatedErrorPercent / 25;
        Assert.True(separated is not { } told || told.StandardError > unsure, $"{separated}");
    }

    // Blood that became darker by five points while the hand moved: the calm R must not pull back what is told.
    [Fact]
    public void APulseOfAnotherRatioThanTheCalmOneIsToldWithItsOwn()
    {
        const double darker = 0.2;
        const double size = 0.33;
        var errors = new List<double>();
        for (var seed = 1; seed <= 40; seed++)
        {
            var first = Broad(seed);
            var second = Broad(seed + 100);
            if (Separate(t => (size * (first(t) + second(t)), size * ((0.3 * first(t)) + (1.5 * second(t)))), Ratio + darker) is { } separated)
            {
                errors.Add(separated.Ratio - Ratio - darker);
            }
        }

        Assert.InRange(errors.Count, 20, 40);
        Assert.InRange(errors.Average(), -darker / 10, darker / 10);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void MovementWithoutAnyPulseHoldsNone(int seed)
    {
        const double size = 3;
        var first = Broad(seed);
        var second = Broad(seed + 100);
        Assert.Null(Separate(t =>
        {
            var pulse = -Finger.Volume(t * RateHz / PeriodBins);
            return (-pulse + (size * (first(t) + second(t))), (-Ratio * pulse) + (size * ((0.3 * first(t)) + (1.5 * second(t)))));
        }));
    }

    // One of them right, each with a chance: the mean of the two, and the variance of a mixture.
    [Fact]
    public void OfTwoAnswersTheErrorIsAlsoWhatTheyDifferBy()
    {
        var either = new SeparatedPulse(0.5, 0.03).Or(new(0.7, 0.01), 0.25);
        Assert.Equal(0.55, either.Ratio, 12);
        Assert.Equal(Math.Sqrt((0.75 * 0.03 * 0.03) + (0.25 * 0.01 * 0.01) + (0.25 * 0.75 * 0.2 * 0.2)), either.StandardError, 12);
    }

    private static SeparatedPulse? Separate(Func<double, (double Infrared, double Red)> movement, double ratio = Ratio)
    {
        var pairs = new double[2 * Basis.Length];
        Fill(pairs, _ => default, Ratio);
        var calm = new PulseTemplate(Design);
        calm.Learn(pairs, [.. Enumerable.Range(0, 9).Select(k => (k + 0.1) * PeriodBins)], PeriodBins, 1, Ratio);
        Fill(pairs, movement, ratio);
        return new MotionSeparation(Design).TrySeparate(pairs, Basis, calm, out var separated) ? separated : null;
    }

    private static void Fill(double[] pairs, Func<double, (double Infrared, double Red)> movement, double ratio)
    {
        var random = new Random(1);
        for (var n = 0; n < pairs.Length / 2; n++)
        {
            var pulse = -Finger.Volume(n / PeriodBins);
            var (infrared, red) = movement((double)n / RateHz);
            pairs[2 * n] = pulse + infrared + (NoiseShare * (random.NextDouble() - 0.5));
            pairs[(2 * n) + 1] = (ratio * pulse) + red + (NoiseShare * (random.NextDouble() - 0.5));
        }

        Basis.Remove(pairs);
    }

    // Of a root mean square as large as the pulse's.
    private static Func<double, double> Broad(int seed)
    {
        var random = new Random(seed);
        var waves = Enumerable.Range(0, 40).Select(_ => (Hz: 0.9 + (7 * random.NextDouble()), Phase: 6.3 * random.NextDouble())).ToArray();
        return t => 0.3 * Math.Sqrt(2.0 / waves.Length) * waves.Sum(w => Math.Sin((2 * Math.PI * w.Hz * t) + w.Phase));
    }
}
