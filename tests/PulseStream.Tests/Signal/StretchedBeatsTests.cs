using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Beats that last longer or shorter are alike once they are stretched to one length.</summary>
public sealed class StretchedBeatsTests
{
    private static readonly int[] Lengths = [50, 36, 62, 44, 33, 58];

    [Fact]
    public void BeatsOfOneShapeAreAlikeHoweverLong()
    {
        var (volumes, rises) = Beats((phase, _) => Shape(phase, 0.5));
        Assert.InRange(new StretchedBeats().AgreementOf(volumes, rises), 0.97, 1);
        var shape = new BeatShape();
        shape.Judge(volumes, rises, 47);
        Assert.InRange(shape.Agreement, -1, 0.9);
    }

    [Fact]
    public void BeatsOfAnyShapeAreNot()
    {
        var (volumes, rises) = Beats((phase, k) => Shape(phase, 0.35 + (0.12 * ((k * 3) % 5))));
        Assert.InRange(new StretchedBeats().AgreementOf(volumes, rises), -1, 0.9);
    }

    [Fact]
    public void OfTwoWholeBeatsNothingIsKnown()
    {
        var (volumes, rises) = Beats((phase, _) => Shape(phase, 0.5));
        Assert.Equal(double.NaN, new StretchedBeats().AgreementOf(volumes, rises.AsSpan(0, 3)));
        Assert.Equal(double.NaN, new StretchedBeats().AgreementOf(volumes, []));
    }

    private static double Shape(double phase, double second) => Bell(phase, 0.15, 0.06) + (0.7 * Bell(phase, second, 0.09));

    private static double Bell(double phase, double at, double width) => Math.Exp(-0.5 * (phase - at) * (phase - at) / (width * width));

    private static (double[] Volumes, double[] Rises) Beats(Func<double, int, double> shape)
    {
        List<double> volumes = [.. new double[10]];
        List<double> rises = [];
        for (var k = 0; k < Lengths.Length; k++)
        {
            rises.Add(volumes.Count + (0.09 * Lengths[k]));
            for (var n = 0; n < Lengths[k]; n++)
            {
                volumes.Add(shape((double)n / Lengths[k], k));
            }
        }

        return ([.. volumes], [.. rises]);
    }
}
