using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Tests.Readings;
using Xunit;

namespace PulseStream.Tests.Signal;

public sealed class PulseTemplateTests
{
    // Between bins a cubic is off by less than a hundredth of a pulse's height.
    private const double Tolerance = 0.01;
    private const double PeriodBins = 81.7;
    private static readonly SignalDesign Design = new(new SampleRate(99), new());

    [Fact]
    public void ALearnedPulseLaidOutAlongItsOwnBeatsIsThePulse()
    {
        var (pairs, rises) = Window();
        var template = new PulseTemplate(Design);
        template.Learn(pairs, rises, PeriodBins, 1, 0.5);
        template.LayOut(rises, pairs);
        Assert.True(template.IsKnown);
        Assert.All(Enumerable.Range(10, 700), n => Assert.Equal(pairs[2 * n], pairs[(2 * n) + 1], Tolerance));
    }

    [Theory]
    [InlineData(true, 0.5, true)]
    [InlineData(true, 0.7, false)]
    [InlineData(false, 0.5, false)]
    public void APulseIsKnownForOneByItsRatioOnceItIsProven(bool isProven, double ratio, bool isKnown)
    {
        var (pairs, rises) = Window();
        var template = new PulseTemplate(Design);
        template.Learn(pairs, rises, PeriodBins, 1, 0.5);
        template.IsProven = isProven;
        Assert.Equal(isKnown, template.Knows(ratio));
    }

    [Fact]
    public void OneWholeBeatTeachesNothing()
    {
        var (pairs, rises) = Window();
        var template = new PulseTemplate(Design);
        template.Learn(pairs.AsSpan(0, 300), rises.AsSpan(0, 3), PeriodBins, 1, 0.5);
        Assert.False(template.IsKnown);
    }

    // The window's room holds another one by the time that the pulse is asked for.
    [Fact]
    public void WhatWasLearnedStaysWhateverBecomesOfTheWindow()
    {
        var (pairs, rises) = Window();
        var (at, late) = (new PulseTemplate(Design), new PulseTemplate(Design));
        at.Learn(pairs, rises, PeriodBins, 1, 0.5);
        var beat = at.Beat.ToArray();
        late.Learn(pairs, rises, PeriodBins, 1, 0.5);
        pairs.AsSpan().Clear();
        rises.AsSpan().Clear();
        Assert.Equal(beat, late.Beat.ToArray());
    }

    private static (double[] Pairs, double[] Rises) Window()
    {
        var bins = Design.LongestWindowBins;
        var pairs = new double[2 * bins];
        for (var n = 0; n < bins; n++)
        {
            pairs[2 * n] = -Finger.Volume(n / PeriodBins);
        }

        return (pairs, [.. Enumerable.Range(0, 9).Select(k => (k + 0.1) * PeriodBins)]);
    }
}
