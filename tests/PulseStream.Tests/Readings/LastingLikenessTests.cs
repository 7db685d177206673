using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Beats without a rhythm, short of what one window alone is believed for: alike second after second they are one heart's.</summary>
public sealed class LastingLikenessTests
{
    // Windows are whole from the seventh second on.
    private const int FirstOfEightInARow = 14;

    // Eight in a row, or seven and one before them that was another wave's.
    [Theory]
    [InlineData(0.95, 0, 8, true)]
    [InlineData(0.95, 0, 7, false)]
    [InlineData(0.85, 0, 20, false)]
    [InlineData(0.95, 1, 7, true)]
    [InlineData(0.95, 2, 6, false)]
    public void BeatsThatStayAlikeAreOneHearts(double likeness, int others, int alike, bool isShown)
    {
        var lasting = new LastingLikeness(new(), hasRed: true);
        Assert.Equal(isShown, IsShownAfter(lasting, Seconds(likeness, others, alike)));
    }

    // Light that is jerked, or too little of it, says nothing of the seconds around it.
    [Fact]
    public void ASecondThatWasNotAskedBeginsAnew()
    {
        var lasting = new LastingLikeness(new(), hasRed: true);
        Assert.True(IsShownAfter(lasting, Seconds(0.95, 0, 8)));
        Assert.False(lasting.IsShownIn(At(9)));
        Assert.False(IsShownAfter(lasting, [(At(10), true, 0.95)]));
    }

    // A short window holds few beats, one light alone shows nothing of movement, and a line has taken some of the wave along.
    [Theory]
    [InlineData(true, 8, 0, true)]
    [InlineData(false, 8, 0, false)]
    [InlineData(true, 7, 0, false)]
    [InlineData(true, 8, 1, false)]
    public void WholeWindowsOfTwoLightsCount(bool hasRed, int windowSeconds, int lines, bool isShown)
    {
        var lasting = new LastingLikeness(new(), hasRed);
        Assert.Equal(isShown, IsShownAfter(lasting, Seconds(0.95, 0, 8).Select(s => (s.Second with { Fit = s.Second.Fit with { WindowSeconds = windowSeconds, Lines = lines } }, s.IsWave, s.Likeness))));
    }

    // Vessels that stay full for half the beat, in atrial fibrillation: fronts a third of the beat long, and no two intervals alike.
    [Fact]
    public void AHeartWithoutRhythmAndWithSlowFrontsIsRead()
    {
        var heart = new Random(5);
        var beats = new List<double> { -2 };
        while (beats[^1] < 62)
        {
            beats.Add(beats[^1] + (0.43 * (1 + (0.3 * ((2 * heart.NextDouble()) - 1)))));
        }

        var heard = Heard.Of(100, new Finger { RateHz = 100, Seconds = 60, PerfusionPercent = 0.7, Spo2 = _ => 85, Blood = t => Plateau(beats, t) }.Samples());
        Assert.Equal(Enumerable.Range(FirstOfEightInARow, 60 - FirstOfEightInARow), heard.Usable.Select(s => (int)s.SecondIndex));
        Assert.All(heard.Usable, s => Assert.InRange(s.Spo2!.Value.Percent, 84.5, 85.5));
    }

    private static double Plateau(List<double> beats, double t)
    {
        var k = beats.FindLastIndex(beat => beat <= t);
        var phase = (t - beats[k]) / (beats[k + 1] - beats[k]);
        return 1 / (1 + Math.Exp(-(phase - 0.2) / 0.04)) / (1 + Math.Exp((phase - 0.62) / 0.065));
    }

    private static bool IsShownAfter(LastingLikeness lasting, IEnumerable<(SignalSecond Second, bool IsWave, double Likeness)> seconds)
    {
        var isShown = false;
        foreach (var (second, isWave, likeness) in seconds)
        {
            lasting.See(second, isWave, likeness);
            isShown = lasting.IsShownIn(second);
        }

        return isShown;
    }

    private static IEnumerable<(SignalSecond Second, bool IsWave, double Likeness)> Seconds(double likeness, int others, int alike) =>
        Enumerable.Range(1, others + alike).Select(k => (At(k), k > others, likeness));

    private static SignalSecond At(int index) =>
        new(index, default, new RatioFit(8, 0.6, 0.001, 0, 0.02, 1e-4, false, 0, 0, false, 0, default), default, false);
}
