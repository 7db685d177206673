using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Light that has come to the calm finger's.</summary>
public sealed class CalmLightTests
{
    private static readonly double LogHeight = Math.Log(0.01);

    // Breathing and baseline grow with the pulse.
    [Fact]
    public void BesideATallPulseMoreLightHasToCome()
    {
        Assert.True(Calm().HasMoved(At(1.07, 1.07), Math.Log(0.01)));
        Assert.False(Calm().HasMoved(At(1.07, 1.07), Math.Log(0.03)));
    }

    // The same counts are a lamp's where they come at once; a slip may let as many past it by chance.
    [Theory]
    [InlineData(true, Reasons.AmbientLight)]
    [InlineData(false, Reasons.AmbientLight | Reasons.Misplaced)]
    public void TheSameCountsAreALampWhereTheyComeAtOnce(bool hasLeapt, Reasons reasons) =>
        Assert.Equal(reasons, Calm().CauseOf(At(1 + (0.1 * 3 / 4), 1.1), hasLeapt));

    // Where both channels are equally bright, equal counts are equal shares, as a slip may let past as well.
    [Fact]
    public void TheSameCountsOfEqualLightsMayBeASlipHoweverTheyCome()
    {
        var light = new CalmLight(new());
        light.Settle(At(0.75, 1));
        Assert.Equal(Reasons.AmbientLight | Reasons.Misplaced, light.CauseOf(At(0.75 * 1.5, 1.5), hasLeapt: true));
    }

    // A lamp may brighten what the pulse is divided by; how much of the pulse is left beside its line says nothing of that.
    [Theory]
    [InlineData(1.1, 1.1, 0.01, false)]
    [InlineData(1.2, 1, 0.01, true)]
    [InlineData(1, 1.2, 0.01, true)]
    [InlineData(1.2, 1.2, 0.08, false)]
    public void LightThatHasComeToTheWholeWindowIsToldFromALampsMean(double infrared, double red, double pulseSize, bool hasRisen)
    {
        var light = Calm();
        for (var second = 0; second < 8; second++)
        {
            light.See(At(infrared, red));
        }

        Assert.Equal(hasRisen, light.HasRisenOver(At(infrared, red, pulseSize: pulseSize)));
    }

    // The newest second alone is not the window.
    [Fact]
    public void OneBrightSecondIsNotTheWindows()
    {
        var light = Calm();
        for (var second = 0; second < 8; second++)
        {
            light.See(At(second == 7 ? 1.3 : 1, second == 7 ? 1.3 : 1));
        }

        Assert.False(light.HasRisenOver(At(1.3, 1.3)));
    }

    private static CalmLight Calm()
    {
        var light = new CalmLight(new());
        light.Settle(At(1, 1));
        return light;
    }

    private static SignalSecond At(double infrared, double red, double pulseSize = 0.01)
    {
        var light = new SecondLight(0, 0, 80_000 * infrared, 60_000 * red, double.NaN, double.NaN, double.NaN, 0.01, 1e-4);
        return new(20, light, new RatioFit(8, 0.8, 0.001, 0, pulseSize, 1e-4, false, 0, 0, false, 0, default), default, false);
    }
}
