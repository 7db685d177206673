using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

public sealed class MovementModelTests
{
    private const int Bins = 134;
    private static readonly SignalDesign Design = new(new SampleRate(25), new());

    // A wave that each moment is told from the two before it but for chance (an autoregression of known weights), in both lights, and
    // chance of red's own: what is left has the variance of one place and tells nothing of the next.
    [Fact]
    public void WhatIsLeftOfAColouredMovementIsWhite()
    {
        var random = new Random(3);
        double power = 0, next = 0, cross = 0;
        var count = 0;
        for (var run = 0; run < 100; run++)
        {
            var pairs = Movement(random);
            var white = Whiten(pairs);
            for (var n = 2 * Lead; n + 2 < pairs.Length; n += 2, count++)
            {
                power += (white[n] * white[n]) + (white[n + 1] * white[n + 1]);
                next += (white[n] * white[n + 2]) + (white[n + 1] * white[n + 3]);
                cross += white[n] * white[n + 1];
            }
        }

        // Of as many places as there are weights nothing is left, and the variance is told for the others.
        var share = 1 - (16.5 / (Bins - Lead));
        Assert.Equal(2 * share, power / count, 0.05);
        Assert.InRange(next / count, -0.1, 0.1);
        Assert.InRange(cross / count, -0.02, 0.02);
    }

    // The window is as likely as the chance in it is small: by the logarithm of what it is smaller by, for each place.
    [Fact]
    public void LikelihoodGrowsWithWhatIsTold()
    {
        var model = new MovementModel(Design);
        var pairs = Movement(new Random(5));
        model.Learn(pairs);
        var whole = model.LogLikelihood;
        model.Learn([.. pairs.Select(value => value / 10)]);
        Assert.Equal(whole + (2 * model.PointCount * Math.Log(10)), model.LogLikelihood, 1e-6 * Math.Abs(whole));
    }

    [Fact]
    public void WhatTheModelItselfCouldTakeIsTakenAwayWhole()
    {
        var model = new MovementModel(Design);
        var pairs = Movement(new Random(9));
        model.Learn(pairs);

        // Infrared one point before is a change of one of its weights.
        var points = new double[2 * model.PointCount];
        for (var n = 0; n < model.PointCount; n++)
        {
            points[n] = pairs[2 * (Lead + n - 1)];
        }

        model.TakeAway(points);
        Assert.All(points, left => Assert.Equal(0, left, 1e-9));
    }

    private static int Lead => new MovementModel(Design).LeadBins;

    private static double[] Whiten(double[] pairs)
    {
        var model = new MovementModel(Design);
        model.Learn(pairs);
        var white = new double[pairs.Length];
        model.Whiten(pairs, white);
        return white;
    }

    private static double[] Movement(Random random)
    {
        var pairs = new double[2 * Bins];
        double one = 0, two = 0;
        for (var n = -50; n < Bins; n++)
        {
            (one, two) = ((1.6 * one) - (0.9 * two) + Chance(random), one);
            if (n >= 0)
            {
                pairs[2 * n] = one;
                pairs[(2 * n) + 1] = (0.7 * one) + (0.5 * Chance(random));
            }
        }

        return pairs;
    }

    private static double Chance(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
