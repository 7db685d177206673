using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Weak rises between full beats: early beats and what is none.</summary>
public sealed class WeakRisesTests
{
    private const double BinRateHz = 50;
    private const int Interval = 45;
    private const int Length = 400;

    [Fact]
    public void AWeakRiseThatComesEarlyIsABeat() => Assert.Contains(120 + 22, Left(120 + 22, out _));

    [Fact]
    public void NoBeatComesBeforeTheHeartHasEmptied() => Assert.DoesNotContain(120 + 12, Left(120 + 12, out _));

    [Fact]
    public void AnEarlyBeatAtTheNewestEdgeIsNotDecidedYet()
    {
        Assert.DoesNotContain(382, Left(382, out var isUndecided));
        Assert.True(isUndecided);
        Left(120 + 22, out isUndecided);
        Assert.False(isUndecided);
    }

    // Full beats every 0.9 s from 30 on, a weak one of half their steepness in between.
    private static double[] Left(int weakAt, out bool isUndecided)
    {
        var slopes = new double[Length];
        var rises = Enumerable.Range(0, 9).Select(k => 30.0 + (Interval * k)).Where(r => r < Length).Append(weakAt).Order().ToArray();
        foreach (var rise in rises)
        {
            slopes[(int)rise] = (int)rise == weakAt ? 0.5 : 1;
        }

        var weak = new WeakRises(BinRateHz);
        var left = weak.Drop(slopes, rises, Interval / BinRateHz);
        isUndecided = weak.IsUndecided;
        return rises[..left];
    }
}
