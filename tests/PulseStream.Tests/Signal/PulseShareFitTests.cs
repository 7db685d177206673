using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

public sealed class PulseShareFitTests
{
    private const int Bins = 134;
    private const double Ratio = 0.6;
    private static readonly SignalDesign Design = new(new SampleRate(25), new());

    // Each share is off by as much as is told, whatever the movement's colour and proportion; with white noise alone by as much as
    // least squares tells: the noise's variance over the sum of the pulse's squares.
    [Theory]
    [InlineData(0, 0, 1.0)]
    [InlineData(1.6, -0.9, 0.3)]
    [InlineData(1.2, -0.5, 2.0)]
    public void SharesAreOffByAsMuchAsIsTold(double first, double second, double size)
    {
        var random = new Random(11);
        var pulse = Pulse();
        var model = new MovementModel(Design);
        var fit = new PulseShareFit(Design, model);
        double infrared = 0, red = 0, told = 0;
        const int runs = 200;
        for (var run = 0; run < runs; run++)
        {
            var pairs = Window(pulse, random, first, second, size);
            var shares = fit.Read(pairs, pulse, new(1, Ratio), out _);
            var redVariance = shares.OwnRedVariance + (shares.Slope * shares.Slope * shares.InfraredVariance);
            infrared += (shares.Infrared - 1) * (shares.Infrared - 1) / shares.InfraredVariance;
            red += (shares.Red - Ratio) * (shares.Red - Ratio) / redVariance;
            told += shares.InfraredVariance;
        }

        // One, but for what is not known of a movement from eight seconds of it.
        Assert.InRange(Math.Sqrt(infrared / runs), 0.8, 1.5);
        Assert.InRange(Math.Sqrt(red / runs), 0.8, 1.5);
        if (first == 0)
        {
            var power = Enumerable.Range(model.LeadBins, Bins - model.LeadBins).Sum(n => pulse[(2 * n) + 1] * pulse[(2 * n) + 1]);
            Assert.InRange(told / runs / (size * size / power), 0.9, 2);
        }
    }

    // A movement of one colour takes far less of what is told than of plain least squares.
    [Fact]
    public void AMovementOfOneColourIsTakenOutOfTheShares()
    {
        var random = new Random(13);
        var pulse = Pulse();
        var fit = new PulseShareFit(Design, new(Design));
        double plain = 0, coloured = 0;
        for (var run = 0; run < 100; run++)
        {
            var pairs = Window(pulse, random, 1.6, -0.95, 0.5);
            plain += Square(PulseShares.Plain(pairs, pulse).Red - Ratio);
            coloured += Square(fit.Read(pairs, pulse, new(1, Ratio), out _).Red - Ratio);
        }

        Assert.InRange(coloured, 0, plain / 3);
    }

    // Shares to begin with that are far off are left within the steps that are taken.
    [Fact]
    public void TheBeginningDoesNotMatter()
    {
        var pulse = Pulse();
        var pairs = Window(pulse, new Random(17), 1.6, -0.9, 0.3);
        var fit = new PulseShareFit(Design, new(Design));
        var near = fit.Read(pairs, pulse, new(1, Ratio), out var ofNear);
        var far = fit.Read(pairs, pulse, new(1.3, Ratio + 0.5), out var ofFar);
        Assert.Equal(near.Red, far.Red, 1e-3);
        Assert.Equal(ofNear, ofFar, 1e-3);
    }

    private static double Square(double value) => value * value;

    private static double[] Pulse()
    {
        var pairs = new double[2 * Bins];
        for (var n = 0; n < Bins; n++)
        {
            pairs[(2 * n) + 1] = Math.Sin(0.5 * n) + (0.5 * Math.Sin((1.0 * n) + 0.7));
        }

        return pairs;
    }

    private static double[] Window(double[] pulse, Random random, double first, double second, double size)
    {
        var pairs = new double[pulse.Length];
        double one = 0, two = 0;
        for (var n = -50; n < Bins; n++)
        {
            (one, two) = ((first * one) + (second * two) + Chance(random), one);
            if (n >= 0)
            {
                var own = size * Chance(random);
                pairs[2 * n] = pulse[(2 * n) + 1] + (size * one);
                pairs[(2 * n) + 1] = (Ratio * pulse[(2 * n) + 1]) + (first == 0 ? own : (1.3 * size * one) + (0.2 * own));
            }
        }

        return pairs;
    }

    private static double Chance(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
