using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>What is asked of a pulse that lost its front to a line of mains light.</summary>
public sealed class BesideLinesTests
{
    private const double PeriodSeconds = 0.5;
    private static readonly BesideLines Rules = new(new());

    [Theory]
    [InlineData(true, 4, 0.05, 0.95, 0.97, true)]
    [InlineData(false, 4, 0.05, 0.95, 0.97, false)]
    [InlineData(true, 2, 0.05, 0.95, 0.97, false)]
    [InlineData(true, 4.8, 0.05, 0.95, 0.97, false)]
    [InlineData(true, 4, 0.01, 0.95, 0.97, false)]
    [InlineData(true, 4, 0.05, 0.85, 0.97, false)]
    [InlineData(true, 4, 0.05, 0.95, 0.9, false)]
    public void APulseIsLeftByOnePureLineOnALaterHarmonic(bool isPure, double lineHz, double thirdWaveShare, double periodicity, double agreement, bool isPulse) =>
        Assert.Equal(isPulse, Rules.LeavesPulse(Second(lineHz, isPure) with
        {
            Pulse = new WindowPulse() with { PeriodSeconds = PeriodSeconds, ThirdWaveShare = thirdWaveShare, Periodicity = periodicity, Agreement = agreement },
        }));

    [Fact]
    public void ALineOnTheFirstWaveTakesThatAlong()
    {
        Assert.False(Rules.LeavesFirstWave(Second(1 / PeriodSeconds, isPure: true)));
        Assert.True(Rules.LeavesFirstWave(Second(2 / PeriodSeconds, isPure: true)));
    }

    private static SignalSecond Second(double lineHz, bool isPure) => new SignalSecond() with
    {
        Fit = new RatioFit() with { Lines = 1, LineHz = lineHz, IsOneLine = true, IsPureLine = isPure },
        Pulse = new WindowPulse() with { PeriodSeconds = PeriodSeconds },
    };
}
