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
    private const double LeastUnsure = 0.05;
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

    // Of two harmonics, in two proportions that no mixture takes away both.
    [Theory]
    [InlineData(0.2)]
    [InlineData(1.3)]
    [InlineData(2.7)]
    [InlineData(4.1)]
    public void WhatKeepsTimeWithTheHeartLeavesTheRatioUnsure(double phase)
    {
        const double size = 0.2;
        static double Wave(double t, int harmonic, double at) => Math.Sin((2 * Math.PI * harmonic * t * RateHz / PeriodBins) + at);
        var separated = Separate(t =>
        {
            var first = size * Wave(t, 1, phase);
            var second = size * Wave(t, 2, 1.7 * phase);
            return (first + second, (1.5 * first) - (0.5 * second));
        });
        Assert.True(separated is not { } told || told.StandardError > LeastUnsure, $"{separated}");
    }

    // Half as high as the pulse, of its rate and phase, and something else besides: what would be taken for the pulse's own height.
    [Fact]
    public void APulseFarHigherThanTheCalmOneIsNotToldFromMovement()
    {
        const double size = 0.35;
        const double front = 0.1;
        var other = Broad(seed: 3);
        Assert.Null(Separate(t =>
        {
            var first = -size * Finger.Volume((t * RateHz / PeriodBins) - front);
            return (first + (size * other(t)), (1.5 * first) - (size * other(t)));
        }));
    }

    // Of white noise the variance of least squares: that of a place over the sum of the pulse's squares.
    [Fact]
    public void WhiteNoiseHasTheVarianceOfLeastSquares()
    {
        const double deviation = 0.3;
        var random = new Random(7);
        var chance = new MovementChance(new(new SampleRate(25), new()));
        double infrared = 0, red = 0, expected = 0;
        for (var run = 0; run < 200; run++)
        {
            var pairs = new double[2 * 120];
            var laidOut = new double[pairs.Length];
            for (var n = 0; n < pairs.Length; n += 2)
            {
                laidOut[n + 1] = Math.Sin(n * 0.25);
                pairs[n] = laidOut[n + 1] + (deviation * Normal(random));
                pairs[n + 1] = (Ratio * laidOut[n + 1]) + (deviation * Normal(random));
            }

            var shares = PulseShares.Of(pairs, laidOut);
            var variance = chance.Of(pairs, laidOut, shares);
            infrared += variance.Infrared;
            red += variance.OwnRed + (variance.Slope * variance.Slope * variance.Infrared);
            expected += deviation * deviation / shares.Power;
        }

        // Some of it went into the shares themselves, and some places are correlated with none that lies beyond the window.
        Assert.InRange(infrared / expected, 0.5, 1.05);
        Assert.InRange(red / expected, 0.5, 1.05);
    }

    private static SeparatedPulse? Separate(Func<double, (double Infrared, double Red)> movement)
    {
        var pairs = new double[2 * Basis.Length];
        Fill(pairs, _ => default);
        var calm = new PulseTemplate(Design);
        calm.Learn(pairs, [.. Enumerable.Range(0, 9).Select(k => (k + 0.1) * PeriodBins)], PeriodBins, 1, Ratio);
        Fill(pairs, movement);
        return new MotionSeparation(Design).TrySeparate(pairs, Basis, calm, out var separated) ? separated : null;
    }

    private static void Fill(double[] pairs, Func<double, (double Infrared, double Red)> movement)
    {
        for (var n = 0; n < pairs.Length / 2; n++)
        {
            var pulse = -Finger.Volume(n / PeriodBins);
            var (infrared, red) = movement((double)n / RateHz);
            pairs[2 * n] = pulse + infrared;
            pairs[(2 * n) + 1] = (Ratio * pulse) + red;
        }

        Basis.Remove(pairs);
    }

    // Of a root mean square as large as the pulse's.
    private static Func<double, double> Broad(int seed)
    {
        var random = new Random(seed);
        var waves = Enumerable.Range(0, 40).Select(_ => (Hz: 0.9 + (4 * random.NextDouble()), Phase: 6.3 * random.NextDouble())).ToArray();
        return t => 0.3 * Math.Sqrt(2.0 / waves.Length) * waves.Sum(w => Math.Sin((2 * Math.PI * w.Hz * t) + w.Phase));
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
