using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What a window keeps of breathing and of a pulse, as a share of a sine's size at its worst phase.</summary>
public sealed class SlowBasisTests
{
    // Breathing of the pulse's own size, and of an R half away from the blood's, then shows as a disagreement of 0.01,
    // which is what a finger may have before its pulse is known. Up to 18 breaths a minute, in every window.
    private const double MostOfBreathing = 0.02;

    // Up to 24 breaths a minute, in the longest window.
    private const double MostOfFastBreathing = 0.04;

    // A pulse of 60 a minute, in the shortest window, where the slow part takes most of it away.
    private const double LeastOfPulse = 0.85;
    private static readonly SignalDesign Design = new(new SampleRate(100), new());

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void BreathingIsTakenAway(int seconds) =>
        Assert.All([0.1, 0.15, 0.2, 0.25, 0.3], hz => Assert.InRange(Phases().Max(phase => Left(seconds, hz, phase)), 0, MostOfBreathing));

    [Fact]
    public void TheLongestWindowTakesFastBreathingAwayToo() =>
        Assert.All([0.35, 0.4], hz => Assert.InRange(Phases().Max(phase => Left(8, hz, phase)), 0, MostOfFastBreathing));

    [Fact]
    public void APulseIsKept() => Assert.All([4, 6, 8], seconds => Assert.InRange(Phases().Min(phase => Left(seconds, 1, phase)), LeastOfPulse, 1.1));

    private static IEnumerable<double> Phases() => Enumerable.Range(0, 16).Select(k => Math.PI * k / 16);

    private static double Left(int seconds, double hz, double phase)
    {
        var basis = Design.SlowOf(seconds);
        var pairs = new double[2 * basis.Length];
        for (var n = 0; n < basis.Length; n++)
        {
            pairs[2 * n] = Math.Sin((2 * Math.PI * hz * n / Design.BinRateHz) + phase);
        }

        basis.Remove(pairs);
        return Math.Sqrt(2 * pairs.Sum(x => x * x) / basis.Length);
    }
}
