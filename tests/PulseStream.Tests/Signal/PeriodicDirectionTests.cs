using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

public sealed class PeriodicDirectionTests
{
    // Of the movement's size, so a hundredth of its power: chance likeness of forty waves to a pulse over eight seconds.
    private const double MostOfMovement = 0.1;

    [Theory]
    [InlineData(1, 0.7, 1.2)]
    [InlineData(2, 0.5, 1.0)]
    [InlineData(3, 1.2, 0.5)]
    [InlineData(4, 0.6, -0.8)]
    public void TheMixtureThatRepeatsLeavesMovementOut(int seed, double ratio, double motionRatio)
    {
        const int bins = 400;
        const double period = 40;
        var random = new Random(seed);
        var waves = Enumerable.Range(0, 40).Select(_ => (Turns: 0.01 + (0.1 * random.NextDouble()), Phase: 6.3 * random.NextDouble())).ToArray();
        var pairs = new double[2 * bins];
        for (var n = 0; n < bins; n++)
        {
            var pulse = Math.Sin(2 * Math.PI * n / period) + (0.4 * Math.Sin(4 * Math.PI * n / period));
            var movement = 0.3 * waves.Sum(w => Math.Sin((2 * Math.PI * w.Turns * n) + w.Phase));
            pairs[2 * n] = pulse + movement;
            pairs[(2 * n) + 1] = (ratio * pulse) + (motionRatio * movement);
        }

        var (infrared, red) = PeriodicDirection.Find(pairs, period);
        Assert.InRange(Math.Abs((infrared + (motionRatio * red)) / (infrared + (ratio * red))), 0, MostOfMovement);
    }
}
