using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Tests.Readings;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>A pulse that was told from what disturbs it as from a movement: it may have been one line all the same.</summary>
public sealed class LineBesideSeparationTests
{
    private const double RateHz = 100;

    // One frequency in another mixture than the pulse's is a pure line; two that beat against each other are none.
    [Theory]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public void TheLineOfASeparatedPulseIsKept(double second, bool wasPureLine)
    {
        double At(double t) => 0.1 * AddedLight.Ramp(t, 20, 0.3) * (Math.Sin(2 * Math.PI * 1.2 * t) + (second * Math.Sin((2 * Math.PI * 2.1 * t) + 1)));
        var signal = new FingerSignal(new SignalDesign(new(RateHz), new()), SampleColumns.Red | SampleColumns.Infrared, null);
        List<RatioFit> separated = [];
        foreach (var sample in new Finger { Seconds = 45, Movement = t => (At(t), 2.2 * At(t)) }.Samples())
        {
            if (!signal.TryStep(sample!.Value, out var told))
            {
                continue;
            }

            if (told.SecondIndex is > 8 and < 20)
            {
                signal.LearnPulse(isProven: true);
            }
            else if (told.Fit.IsSeparated)
            {
                separated.Add(told.Fit);
            }
        }

        Assert.NotEmpty(separated);
        if (wasPureLine)
        {
            Assert.Contains(separated, fit => fit.WasPureLine && Math.Abs(fit.LineHz - 1.2) < 0.1);
        }
        else
        {
            Assert.DoesNotContain(separated, fit => fit.WasPureLine);
        }
    }
}
