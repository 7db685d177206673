using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Noise that a calm finger did not have is no weak pulse's.</summary>
public sealed class NewNoiseTests
{
    private const double RateHz = 100;

    // The pulse is the same as before, of 1 %: what drowns it has come, as a lamp that flickers fast does, or a hand that trembles.
    [Fact]
    public void APulseThatNoiseComesToIsNotWeak()
    {
        var noise = new Random(2);
        double Noise(double t) => t < 20 ? 0 : 1200 * (noise.NextDouble() - 0.5);
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, PerfusionPercent = 1 }.Samples().With(RateHz, t => (Noise(t), Noise(t))));
        var refused = Enumerable.Range(24, 15).Select(second => heard.ReasonsAt(second)).Where(reasons => reasons != Reasons.None).ToArray();
        Assert.InRange(refused.Length, 10, 15);
        Assert.All(refused, reasons => Assert.Equal(Reasons.AmbientLight | Reasons.Motion, reasons));
    }

    // More of it hides the pulse altogether: the finger has not lost it. Where the light has changed as well, it may be no finger's.
    [Theory]
    [InlineData(2500)]
    [InlineData(6000)]
    public void APulseThatNoiseHidesIsNotMissing(double counts)
    {
        var noise = new Random(2);
        double Noise(double t) => t < 20 ? 0 : counts * (noise.NextDouble() - 0.5);
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, PerfusionPercent = 1 }.Samples().With(RateHz, t => (Noise(t), Noise(t))));
        Assert.All(Enumerable.Range(24, 15), second => Assert.Equal(Reasons.AmbientLight | Reasons.Motion, heard.ReasonsAt(second)));
    }

    // A pulse that stops leaves the noise that the finger had.
    [Fact]
    public void APulseThatStopsIsMissing()
    {
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, PerfusionPercent = 1, Blood = t => t < 20 ? Finger.Volume(1.2 * t) : 0.2 }.Samples());
        Assert.All(Enumerable.Range(30, 9), second => Assert.Equal(Reasons.NoPulse, heard.ReasonsAt(second)));
    }

    // A finger that was never seen with less noise has a weak pulse.
    [Fact]
    public void APulseInNoiseThatWasAlwaysThereIsWeak()
    {
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, PerfusionPercent = 0.1, NoisePercent = 0.1 }.Samples());
        Assert.DoesNotContain(heard.Seconds, s => s.Unusable is { } refused && refused.Reasons.HasFlag(Reasons.AmbientLight));
    }
}
