using PulseStream.Readings;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Readings;

public sealed class FingerReaderTests
{
    // A third of what an oximeter shows as its last digit.
    private const double PercentTolerance = 0.3;
    private const double PulseTolerance = 2;

    [Theory]
    [InlineData(50)]
    [InlineData(100)]
    [InlineData(250)]
    public void AQuietFingerIsReadWithinTwelveSeconds(double rateHz)
    {
        var finger = new Finger { RateHz = rateHz };
        var heard = Heard.Of(rateHz, finger.Samples());
        Assert.All(heard.Usable, second => Assert.Equal(97, second.Spo2!.Value.Percent, PercentTolerance));
        Assert.All(heard.Usable, second => Assert.Equal(finger.PulsePerMinute, second.PulseRatePerMinute!.Value, PulseTolerance));
        var first = heard.Readings.First();
        Assert.Equal(97, first.WholeSpo2Percent);
        Assert.InRange(first.SecondIndex, 0, 12);
    }

    [Fact]
    public void AReadingNeedsFiveUsableSeconds()
    {
        var heard = Heard.Of(100, new Finger().Samples());
        Assert.Equal(heard.Usable.First().SecondIndex + 4, heard.Readings.First().SecondIndex);
        Assert.Equal(5, heard.Readings.First().HeldSeconds);
    }

    [Fact]
    public void NoReadingWithoutAFinger()
    {
        var heard = Heard.Of(100, new Finger().Air());
        Assert.Empty(heard.Usable);
        Assert.Empty(heard.Readings);
        Assert.True(heard.ReasonsAt(10).HasFlag(Reasons.NoFinger));
    }

    [Fact]
    public void AnEmptyClipIsNoSitting() => Assert.Empty(Heard.Of(100, new Finger().Air()).Sittings);

    [Fact]
    public void NoReadingWhileTheLightStandsAtItsEndStop()
    {
        // A converter of 80 000 counts cuts the top off every beat.
        const double fullScale = 80_000;
        var samples = Array.ConvertAll(new Finger().Samples(), s => (Sample?)Sample.OfLight(s!.Value.Red, Math.Min(s.Value.Infrared, fullScale)));
        var heard = Heard.Of(100, samples, fullScale: fullScale);
        Assert.Empty(heard.Usable);
        Assert.True(heard.ReasonsAt(10).HasFlag(Reasons.Saturated));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void NoReadingOnMovementTenTimesThePulse(int seed)
    {
        // Root mean square 0.07 where the pulse has 0.007; both lights shake alike.
        var random = new Random(seed);
        var waves = Enumerable.Range(0, 40).Select(_ => (Hz: 0.3 + (5 * random.NextDouble()), Phase: 6.3 * random.NextDouble())).ToArray();
        double At(double t) => 0.0157 * waves.Sum(w => Math.Sin((2 * Math.PI * w.Hz * t) + w.Phase));
        var heard = Heard.Of(100, new Finger { Movement = t => (At(t), At(t)), Seed = seed }.Samples());
        Assert.Empty(heard.Readings);
    }

    [Fact]
    public void AFallOfSaturationShowsWithinEightSeconds()
    {
        // Nine tenths of the fall from 97 to 90.
        const double most = 90.7;
        var heard = Heard.Of(100, new Finger { Seconds = 70, Spo2 = t => t < 40 ? 97 : 90 }.Samples());
        var after = heard.Usable.Where(s => s.SecondIndex >= 47).ToArray();
        Assert.Equal(23, after.Length);
        Assert.All(after, s => Assert.InRange(s.Spo2!.Value.Percent, 89.7, most));
    }

    [Fact]
    public void AValueOnARoundingBoundarySettles()
    {
        var heard = Heard.Of(100, new Finger { Spo2 = _ => 96.5, NoisePercent = 0.03 }.Samples());
        Assert.InRange(Assert.Single(heard.Readings).WholeSpo2Percent, 96, 97);
    }

    [Fact]
    public void AGapIsToldUntilTheWindowHasRefilledAndThenReadsAgain()
    {
        var samples = new Finger { Seconds = 50 }.Samples();
        samples.AsSpan(2000, 300).Clear();
        var heard = Heard.Of(100, samples);
        Assert.All(Enumerable.Range(20, 3), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.MissingSamples)));
        Assert.All(Enumerable.Range(23, 4), second => Assert.True((heard.ReasonsAt(second) & (Reasons.MissingSamples | Reasons.Settling)) != Reasons.None));
        Assert.Equal(Enumerable.Range(35, 15), heard.Usable.Where(s => s.SecondIndex >= 35).Select(s => (int)s.SecondIndex));
        Assert.Equal(50, heard.Seconds.Count());
    }

    // Between two seconds, so that neither misses more than half of its samples.
    [Fact]
    public void ALoosePlugOfNineTenthsOfASecondCostsNoWindow()
    {
        var samples = new Finger { Seconds = 50 }.Samples();
        samples.AsSpan(2055, 90).Clear();
        samples.AsSpan(3250, 90).Clear();
        var heard = Heard.Of(100, samples);
        Assert.Equal(Enumerable.Range(12, 38), heard.Usable.Where(s => s.SecondIndex >= 12).Select(s => (int)s.SecondIndex));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    [Fact]
    public void InfraredAloneGivesAPulseAndNoSaturation()
    {
        var samples = Array.ConvertAll(new Finger().Samples(), s => (Sample?)Sample.OfLight(double.NaN, s!.Value.Infrared));
        var heard = Heard.Of(100, samples, SampleColumns.Infrared);
        Assert.True(heard.Usable.Count() > 20);
        Assert.All(heard.Usable, s => Assert.Null(s.Spo2));
        Assert.All(heard.Usable, s => Assert.Equal(72, s.PulseRatePerMinute!.Value, PulseTolerance));
        Assert.Empty(heard.Readings);
        Assert.Equal(72, Assert.Single(heard.Sittings).MedianPulseRatePerMinute!.Value, PulseTolerance);
    }

    [Fact]
    public void ATenthOfTheSamplesMissingAtRandomStillReads()
    {
        var random = new Random(7);
        var samples = Array.ConvertAll(new Finger().Samples(), s => random.NextDouble() < 0.1 ? null : s);
        var heard = Heard.Of(100, samples);
        Assert.Equal(20, heard.Usable.Count(s => s.SecondIndex >= 10));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    [Theory]
    [InlineData(70, SittingOutcome.Accepted)]
    [InlineData(30, SittingOutcome.Unsettled)]
    public void ASittingOfAMinuteIsAcceptedAndAShorterOneIsNot(int seconds, SittingOutcome outcome)
    {
        var sitting = Assert.Single(Heard.Of(100, new Finger { Seconds = seconds }.Samples()).Sittings);
        Assert.Equal(outcome, sitting.Outcome);
        Assert.Equal(outcome == SittingOutcome.Accepted ? 97 : null, sitting.RecordReading?.WholeSpo2Percent);
    }

    [Fact]
    public void ReadingsThatDifferByMoreThanThreePointsStayUnsettledAndKeepTheLowest()
    {
        var heard = Heard.Of(100, new Finger { Seconds = 90, Spo2 = t => t < 40 ? 97 : 90 }.Samples());
        var sitting = Assert.Single(heard.Sittings);
        Assert.Equal(SittingOutcome.Unsettled, sitting.Outcome);
        Assert.Null(sitting.RecordReading);
        Assert.Equal(90, sitting.LowestReading!.WholeSpo2Percent);
    }

    // One column twice, or a light that has crossed no finger: R is 1 to the last digit, which the curve calls 85 %.
    [Fact]
    public void TheSameCountsTwiceAreNoTwoLights()
    {
        var once = new Finger { Seconds = 40, Spo2 = _ => 85 }.Samples();
        var twice = Array.ConvertAll(once, s => (Sample?)Sample.OfLight(s!.Value.Infrared, s.Value.Infrared));
        Assert.NotEmpty(Heard.Of(100, once).Readings);
        var heard = Heard.Of(100, twice);
        Assert.Empty(heard.Usable);
        Assert.All(Enumerable.Range(10, 30), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.Motion)));
    }
}
