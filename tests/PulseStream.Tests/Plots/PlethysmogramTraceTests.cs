using PulseStream.Plots;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Plots;

public class PlethysmogramTraceTests
{
    private const double Hz = 100;
    private const double PulseHz = 1.2;

    // The two edges take 3 and 0.5 % of a pulse at 1.2 Hz: |H| of a first order high-pass at 0.3 Hz and low-pass at 12 Hz.
    private const double FilterLoss = 0.05;

    [Fact]
    public void LessLightIsMoreBloodAndOneIsAPercentOfTheLight()
    {
        // Half a percent up and down, as Beer-Lambert has it.
        var trace = Traced(SampleColumns.Infrared, i => Sample.OfLight(double.NaN, 150_000 * Math.Exp(-0.005 * Pulse(i))));

        Assert.InRange(Highest(trace, 2000), 0.5 * (1 - FilterLoss), 0.5);
        Assert.True(trace.Envelope.HighOf(2000 + (int)(Hz / PulseHz / 4)) > 0.4);
    }

    [Fact]
    public void AmbientLightIsTakenAway()
    {
        var trace = Traced(
            SampleColumns.Infrared | SampleColumns.Ambient,
            i => Sample.OfLight(double.NaN, (150_000 * Math.Exp(-0.005 * Pulse(i))) + 90_000) with { Ambient = 90_000 });

        Assert.InRange(Highest(trace, 2000), 0.5 * (1 - FilterLoss), 0.5);
    }

    [Fact]
    public void AReadyMadePlethysmogramKeepsItsUnit()
    {
        var trace = Traced(SampleColumns.Pleth, i => Sample.OfPleth(40 + (7 * Pulse(i))));

        Assert.InRange(Highest(trace, 2000), 7 * (1 - FilterLoss), 7);
    }

    [Fact]
    public void DarknessIsAGapAndNoNumber()
    {
        var trace = Traced(SampleColumns.Infrared, i => Sample.OfLight(double.NaN, i is >= 1000 and < 1200 ? 0 : 150_000));

        Assert.True(double.IsNaN(trace.Envelope.LowOf(1100)));
        Assert.Equal(0, trace.Envelope.LowOf(1201), 1e-9);
    }

    [Fact]
    public void AGapStaysAGapAndTheLevelAfterALongOneDoesNotKick()
    {
        var trace = new PlethysmogramTrace(new("x", new SampleRate(Hz), SampleColumns.Infrared));
        trace.OnNext(new(0, Enumerable.Repeat(Sample.OfLight(double.NaN, 150_000), 100).ToArray()));
        trace.OnNext(new(200, Enumerable.Repeat(Sample.OfLight(double.NaN, 60_000), 100).ToArray()));

        Assert.True(double.IsNaN(trace.Envelope.LowOf(150)));
        Assert.Equal(0, Highest(trace, 200), 1e-9);
        Assert.Equal(300, trace.EndIndex);
    }

    private static double Pulse(long index) => Math.Sin(2 * Math.PI * PulseHz * index / Hz);

    private static double Highest(PlethysmogramTrace trace, int from) =>
        Enumerable.Range(from, trace.Envelope.Count - from).Max(trace.Envelope.HighOf);

    private static PlethysmogramTrace Traced(SampleColumns columns, Func<long, Sample> sampleAt)
    {
        var trace = new PlethysmogramTrace(new("x", new SampleRate(Hz), columns));
        trace.OnNext(new(0, Enumerable.Range(0, 4000).Select(i => sampleAt(i)).ToArray()));
        return trace;
    }
}
