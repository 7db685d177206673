using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>A lamp on a harmonic of the pulse, whose wave turns against it.</summary>
public sealed class LampMixtureTests
{
    [Fact]
    public void TheMixtureOfALampIsFoundOnceThePulseHasTurnedAgainstIt()
    {
        const double ratio = 0.6, mix = 1.7, pulse = 0.8, tolerance = 0.15;
        var mixture = new LampMixture();
        var found = 0.0;
        var (whole, without) = (new double[2 * 400], new double[2 * 400]);
        for (var second = 0; second < 40; second++)
        {
            for (var n = 0; n < 400; n++)
            {
                var angle = 2 * Math.PI * 2.4 * n / 50;
                var (lamp, blood) = (Math.Sin(angle), pulse * Math.Sin(angle + (2 * Math.PI * second / 20)));
                (whole[2 * n], whole[(2 * n) + 1]) = (lamp + blood, (mix * lamp) + (ratio * blood));
            }

            found = mixture.Of(whole, without, ratio);
            if (second == 0)
            {
                // One window alone takes the pulse's wave for the lamp's.
                Assert.False(Math.Abs(found - mix) < 2 * tolerance);
            }
        }

        Assert.Equal(mix, found, tolerance);
    }
}
