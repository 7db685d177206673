using PulseStream.Readings;
using PulseStream.Samples;
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

    // Six hundredths of a second are enough to see that the light is the finger's.
    [Fact]
    public void AFewSamplesShowThatTheFingerIsThere()
    {
        var heard = Heard.Of(RateHz, WithGap(0.94, From + 0.06));
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= From), s => Assert.True(s.IsUsable));
    }

    // Two seconds without a sample are 64 places of 31.25 a second from one bin to the next.
    [Fact]
    public void TwoSecondsAreBridgedAtAnyRate()
    {
        const double rateHz = 31.25;
        var samples = new Finger { RateHz = rateHz, Seconds = 40 }.Samples();
        Array.Clear(samples, (int)(From * rateHz), 63);
        var heard = Heard.Of(rateHz, samples);
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= From + 3), s => Assert.True(s.IsUsable));
    }

    // A tenth of a second at the foot of a slow beat is as still as air.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AStretchBetweenTwoFrontsIsNoAir(bool isOff)
    {
        var finger = new Finger { RateHz = RateHz, Seconds = 40, PulsePerMinute = 40, BreathingPercent = 0 };
        var samples = (isOff ? finger with { Movement = t => t < 29 ? default : (0.9, 0.9), PerfusionPercent = 1e-3 } : finger).Samples();
        if (isOff)
        {
            finger.Samples().AsSpan(0, 29 * RateHz).CopyTo(samples);
        }

        samples.AsSpan(2870, 120).Clear();
        Assert.Equal(isOff, Heard.Of(RateHz, samples).ReasonsAt(29).HasFlag(Reasons.NoFinger));
    }

    // Samples that are lost here and there leave enough of each second to see that nothing is in the clip.
    [Fact]
    public void AirWithEveryFourthSampleMissingIsAir()
    {
        var random = new Random(1);
        var air = Enumerable.Range(0, 30 * RateHz).Select(n => n % 4 == 0 ? (Sample?)null : Sample.OfLight(200_000 + random.Next(-15, 16), 210_000 + random.Next(-15, 16)));
        var heard = Heard.Of(RateHz, [.. air]);
        Assert.All(Enumerable.Range(5, 25), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.NoFinger)));
    }

    // A straight line at a window's end holds nothing of the pulse, whatever is taken for a change of the blood before it.
    [Theory]
    [InlineData(1.79, 20.1)]
    [InlineData(1.7, 20.2)]
    [InlineData(1.9, 20.05)]
    [InlineData(1.6, 20.35)]
    public void NoChangeOfTheBloodIsReadAcrossAGap(double seconds, double from)
    {
        var samples = new Finger { RateHz = 25, Seconds = 30, PulsePerMinute = 125, NoisePercent = 0.05, PerfusionPercent = 1.5 }.Samples();
        Array.Clear(samples, (int)(from * 25), (int)(seconds * 25));
        Assert.All(Heard.Of(25, samples).Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, 1.0));
    }

    // Of a finger that was not seen for longer nothing is left to go on from.
    [Fact]
    public void ALongerGapBeginsAnew()
    {
        var heard = Heard.Of(RateHz, WithGap(2.5));
        Assert.Equal(Reasons.Settling, heard.ReasonsAt(From + 3));
    }

    private static PulseStream.Samples.Sample?[] WithGap(double seconds, double from = From)
    {
        var samples = new Finger { RateHz = RateHz, Seconds = 40 }.Samples();
        Array.Clear(samples, (int)Math.Round(from * RateHz), (int)Math.Round(seconds * RateHz));
        return samples;
    }
}
