using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Movement at the pulse's own rate from the first second on, before any pulse is known.</summary>
public sealed class OwnRateTests
{
    // The smaller of two even waves at nearly one rate passes for a lamp, and what is left, with the movement's R, for a pulse.
    [Theory]
    [InlineData(160, 0.08, 1.3)]
    [InlineData(174, 0.05, 2)]
    [InlineData(174, 0.08, 1.3)]
    [InlineData(186, 0.05, 2)]
    public void NothingIsAcceptedWhereEitherOfTwoWavesMayBeThePulse(double pulsePerMinute, double driftHz, double size)
    {
        const double movementRatio = 0.43;
        var finger = new Finger { RateHz = 25, Seconds = 50, PerfusionPercent = 1, BreathingPercent = 0, NoisePercent = 0.005, Spo2 = _ => 95.6, Blood = Blood, Movement = Movement };
        Assert.Empty(Heard.Of(25, finger.Samples()).Readings);

        double Blood(double t) => 0.5 + Math.Sin(Turn(t)) + (0.4 * Math.Sin((2 * Turn(t)) + 0.9)) + (0.15 * Math.Sin((3 * Turn(t)) + 1.7));

        (double, double) Movement(double t)
        {
            var turn = Turn(t) + (2 * Math.PI * ((driftHz * t) + (0.03 * Math.Sin(2 * Math.PI * 0.11 * t))));
            var light = -0.01 * size * (Math.Sin(turn) + (0.4 * Math.Sin((2 * turn) + 1))) * (1 + (0.1 * Math.Sin(2 * Math.PI * 0.31 * t)));
            return (light, movementRatio * light);
        }

        double Turn(double t) => 2 * Math.PI * ((pulsePerMinute / 60 * t) + (0.03 * Math.Sin(2 * Math.PI * 0.23 * t)) + (0.02 * Math.Sin(2 * Math.PI * 0.71 * t)));
    }
}
