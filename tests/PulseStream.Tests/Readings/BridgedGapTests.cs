using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Samples that are missing for longer than a second, and what is read as soon as they are there again.</summary>
public sealed class BridgedGapTests
{
    private const int RateHz = 100;
    private const int From = 20;

    [Theory]
    [InlineData(1.3)]
    [InlineData(1.8)]
    public void AFingerIsReadInTheFirstWholeSecondAfterAGap(double seconds)
    {
        var heard = Heard.Of(RateHz, WithGap(seconds));
        Assert.Equal(Reasons.MissingSamples, heard.ReasonsAt(From));
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= From + 2), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, 0.2));
        Assert.All(heard.Usable, s => Assert.Equal(72, s.PulseRatePerMinute ?? 72, 2.5));
    }

    // Of a finger that was not seen for longer nothing is left to go on from.
    [Fact]
    public void ALongerGapBeginsAnew()
    {
        var heard = Heard.Of(RateHz, WithGap(2.5));
        Assert.Equal(Reasons.Settling, heard.ReasonsAt(From + 3));
    }

    private static PulseStream.Samples.Sample?[] WithGap(double seconds)
    {
        var samples = new Finger { RateHz = RateHz, Seconds = 40 }.Samples();
        Array.Clear(samples, From * RateHz, (int)(seconds * RateHz));
        return samples;
    }
}
