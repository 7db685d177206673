using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>The pulse rate of a second against the true beats of the eight seconds that end with it.</summary>
public sealed class PulseRateTests
{
    private const double RateHz = 100;
    private const double Seconds = 60;

    // Within three a minute of the mean of the true beats; the shorter first windows are out by ten seconds.
    private const double Tolerance = 3;
    private const int FromSecond = 10;

    // How the window's ends are counted decides the rest: one in twenty.
    private const double LeastShare = 0.95;

    [Theory]
    [InlineData(1, 60)]
    [InlineData(2, 80)]
    [InlineData(3, 100)]
    [InlineData(4, 120)]
    [InlineData(5, 70)]
    [InlineData(6, 90)]
    public void AnIrregularHeartHasTheMeanRateOfItsLastEightSeconds(int seed, double perMinute)
    {
        var random = new Random(seed);
        var heart = Heart.Of(Seconds, (_, _) => 60 / perMinute * (0.62 + (0.76 * random.NextDouble())));
        var heard = Read(heart);
        var given = heard.Where(s => s.PulseRatePerMinute is not null).ToArray();
        Assert.All(heard, s => Assert.True(s.Warnings.HasFlag(Reasons.Irregular)));
        Assert.True(given.Length >= 0.8 * heard.Length, $"{given.Length} of {heard.Length} seconds have a rate");
        Assert.True(given.Count(s => Math.Abs(Error(heart, s)) <= Tolerance) >= LeastShare * given.Length, string.Join(' ', given.Select(s => $"{Error(heart, s):F1}")));
    }

    [Fact]
    public void NoRateIsToldWhereItWouldDependOnTheCounting()
    {
        // Pauses of two intervals: whether one lies in the window or half outside is worth more than the tolerance.
        var random = new Random(7);
        var heart = Heart.Of(Seconds, (_, _) => random.NextDouble() < 0.3 ? 1.9 : 0.55);
        var heard = Read(heart);
        Assert.Contains(heard, s => s.PulseRatePerMinute is null);
        Assert.All(heard.Where(s => s.PulseRatePerMinute is null), s => Assert.True(s.Warnings.HasFlag(Reasons.Irregular)));
    }

    [Fact]
    public void AStepOfTheRateIsGoneAfterEightSeconds()
    {
        const double step = 30;
        var heard = Read(Heart.Of(Seconds, (_, t) => 60 / (t < step ? 60.0 : 130.0)));
        Assert.All(heard, s => Assert.InRange(s.PulseRatePerMinute ?? 100, 60 - Tolerance, 130 + Tolerance));
        Assert.All(heard.Where(s => s.SecondIndex + 1 > step + 8), s => Assert.Equal(130, s.PulseRatePerMinute!.Value, Tolerance));
    }

    [Theory]
    [InlineData(60, 0.5)]
    [InlineData(75, 0.5)]
    [InlineData(90, 0.5)]
    [InlineData(64, 0.31)]
    [InlineData(64, 0.34)]
    [InlineData(64, 0.27, 0.9)]
    [InlineData(78, 0.28, 0.85)]
    public void TheWeakBeatsOfBigeminyCount(double perMinute, double height, double early = 0.72)
    {
        var heart = Heart.Of(Seconds, (k, _) => 60 / perMinute * (k % 2 == 0 ? early : 2 - early), k => k % 2 == 0 ? 1 : height);
        Assert.All(Read(heart).Where(s => s.PulseRatePerMinute is not null), s => Assert.Equal(0, Error(heart, s), Tolerance));
    }

    // A heart that has just beaten is still emptying a third of a second later, and an early beat is early: these are two waves of one beat.
    [Theory]
    [InlineData(0.31, 0.48, 0.85)]
    [InlineData(0.31, 0.48, 1)]
    [InlineData(0.43, 0.6, 0.85)]
    public void BeatsThatAreWavesOfOneAreCountedOnceOrNotAtAll(double early, double late, double height)
    {
        var heart = Heart.Of(Seconds, (k, _) => k % 2 == 0 ? early : late, k => k % 2 == 0 ? 1 : height);
        Assert.All(Read(heart), s => Assert.Equal(60 / (early + late), s.PulseRatePerMinute ?? (60 / (early + late)), Tolerance));
    }

    // Hardly early, but later than any second wave: a heart that beats a little unevenly in turn.
    [Theory]
    [InlineData(80, 0.85, 0.6)]
    [InlineData(70, 0.88, 0.8)]
    public void TheRateOfBeatsThatAreALittleEarlyIsTold(double perMinute, double early, double height)
    {
        var heart = Heart.Of(Seconds, (k, _) => 60 / perMinute * (k % 2 == 0 ? early : 2 - early), k => k % 2 == 0 ? 1 : height);
        var read = Read(heart);
        Assert.True(read.Count(s => s.PulseRatePerMinute is not null) >= LeastShare * read.Length);
        Assert.All(read.Where(s => s.PulseRatePerMinute is not null), s => Assert.Equal(0, Error(heart, s), Tolerance));
    }

    // The full beat stays up for its short interval, the early one falls through its long one: two kinds of beat.
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.85)]
    public void TheRateOfBigeminyIsToldThoughItsBeatsAreOfTwoKinds(double height)
    {
        static double Front(int k) => 0.3 + (2 * (k / 2)) + (k % 2 == 0 ? 0 : 0.68);
        double Blood(double t)
        {
            var k = Math.Max(0, 2 * (int)((t - 0.3) / 2));
            k += t >= Front(k + 1) ? 1 : 0;
            return (k % 2 == 0 ? 1 : height) * Finger.Volume(Math.Max(0, (t - Front(k)) / (Front(k + 1) - Front(k))));
        }

        var heard = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = Blood }.Samples()).Usable.Where(s => s.SecondIndex >= FromSecond).ToArray();
        Assert.All(heard, s => Assert.Equal(60, s.PulseRatePerMinute ?? 60, Tolerance));
        Assert.True(heard.Count(s => s.PulseRatePerMinute is not null) >= LeastShare * heard.Length);
    }

    // Blood that drains slowly between two waves keeps the full beat up until the early one comes on top of it.
    [Theory]
    [InlineData(87, 0.78, 0.65)]
    [InlineData(84, 0.8, 0.5)]
    public void BigeminyWhoseFullBeatsStayUpIsNotHalved(double perMinute, double early, double height)
    {
        var heart = Heart.Of(Seconds, (k, _) => 60 / perMinute * (k % 2 == 0 ? early : 2 - early), k => k % 2 == 0 ? 1 : height);
        double Blood(double t) => heart.BloodAt(t) + (0.75 * heart.BloodAt(t - 0.13));
        var heard = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = Blood }.Samples()).Usable.Where(s => s.SecondIndex >= FromSecond).ToArray();
        Assert.All(heard.Where(s => s.PulseRatePerMinute is not null), s => Assert.Equal(0, Error(heart, s), Tolerance));
        Assert.True(heard.Count(s => s.PulseRatePerMinute is not null) >= 0.8 * heard.Length);
    }

    [Theory]
    [InlineData(126, 0.7)]
    [InlineData(126, 0.9)]
    [InlineData(51, 0.6)]
    public void AGapOfSamplesNeitherHidesNorInventsBeats(double perMinute, double gapSeconds)
    {
        var samples = new Finger { Seconds = Seconds, Blood = Heart.Of(Seconds, (_, _) => 60 / perMinute).BloodAt }.Samples();
        for (var n = 0; n < samples.Length; n++)
        {
            samples[n] = ((n / RateHz) + 2) % 4.1 < gapSeconds ? null : samples[n];
        }

        var heard = Heard.Of(RateHz, samples).Usable.Where(s => s.SecondIndex >= FromSecond).ToArray();
        Assert.All(heard, s => Assert.Equal(perMinute, s.PulseRatePerMinute ?? perMinute, Tolerance));
        Assert.True(heard.Count(s => s.PulseRatePerMinute is not null) >= 0.8 * heard.Length);
    }

    [Fact]
    public void AnEarlyBeatThatHardlyPulsesCounts()
    {
        var heart = Heart.Of(Seconds, (k, _) => k % 6 == 4 ? 0.33 : k % 6 == 5 ? 1.1 : 0.7, k => k % 6 == 5 ? 0.42 : 1);
        var given = Read(heart).Where(s => s.PulseRatePerMinute is not null).ToArray();
        Assert.True(given.Count(s => Math.Abs(Error(heart, s)) <= Tolerance) >= LeastShare * given.Length, string.Join(' ', given.Select(s => $"{Error(heart, s):F1}")));
    }

    [Theory]
    [InlineData(45)]
    [InlineData(57)]
    [InlineData(72)]
    public void AStrongSecondWaveIsNoBeat(double perMinute)
    {
        var random = new Random(3);
        var heart = Heart.Of(Seconds, (_, _) => 60 / perMinute * (0.99 + (0.02 * random.NextDouble())), secondWave: 0.55);
        Assert.All(Read(heart), s => Assert.Equal(0, Error(heart, s), 1.5));
    }

    // A heart that throws more and less in turn beats evenly (pulsus alternans: common practice); its weak beats are no second waves of half as many.
    [Theory]
    [InlineData(96, 0.45)]
    [InlineData(110, 0.6)]
    [InlineData(120, 0.75)]
    [InlineData(126, 0.45)]
    public void WeakBeatsInTurnAreNotLeftOut(double perMinute, double height)
    {
        var random = new Random(4);
        var heart = Heart.Of(Seconds, (_, _) => 60 / perMinute * (0.99 + (0.02 * random.NextDouble())), k => k % 2 == 0 ? 1 : height);
        Assert.All(Read(heart).Where(s => s.PulseRatePerMinute is not null), s => Assert.Equal(0, Error(heart, s), Tolerance));
    }

    // Half a beat later and nearly as steep: the window repeats with both. Later than a beat's own waves come, they may be weak beats of twice as fast a heart.
    [Theory]
    [InlineData(0.7, 0.8, true)]
    [InlineData(0.9, 0.8, false)]
    [InlineData(0.9, 0.86, false)]
    public void ASecondWaveAtHalfTheTimeIsNoBeat(double period, double height, bool isTold)
    {
        double Blood(double t) => Bell((t % period) - 0.2) + (height * Bell((t % period) - 0.2 - (period / 2)));
        static double Bell(double seconds) => Math.Exp(-0.5 * seconds * seconds / (0.06 * 0.06));
        var heard = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = Blood }.Samples()).Usable.Where(s => s.SecondIndex >= FromSecond).ToArray();
        Assert.All(heard, s => Assert.Equal(60 / period, s.PulseRatePerMinute ?? (60 / period), Tolerance));
        Assert.True(heard.Count(s => s.PulseRatePerMinute is not null) >= (isTold ? 0.9 : 0) * heard.Length);
    }

    // A quarter of a full beat, and the heart waits longer behind it: the pause tells it from a second wave.
    [Theory]
    [InlineData(0.25)]
    [InlineData(0.32)]
    public void AnEarlyBeatBeforeAPauseCounts(double height)
    {
        var heart = Heart.Of(Seconds, (k, _) => k % 8 == 4 ? 0.5 : k % 8 == 5 ? 1.05 : 0.8, k => k % 8 == 5 ? height : 1);
        var read = Read(heart);
        var given = read.Where(s => s.PulseRatePerMinute is not null).ToArray();
        Assert.True(given.Length >= 0.7 * read.Length, $"{given.Length} of {read.Length}");
        Assert.True(given.Count(s => Math.Abs(Error(heart, s)) <= Tolerance) >= LeastShare * given.Length, string.Join(' ', given.Select(s => $"{Error(heart, s):F1}")));
    }

    [Theory]
    [InlineData(64, 0.56)]
    [InlineData(72, 0.58)]
    public void TheRateOfBigeminyIsToldHoweverEarlyItsBeatsAre(double perMinute, double early)
    {
        var heart = Heart.Of(Seconds, (k, _) => 60 / perMinute * (k % 2 == 0 ? early : 2 - early), k => k % 2 == 0 ? 1 : 0.7);
        var read = Read(heart);
        Assert.All(read.Where(s => s.PulseRatePerMinute is not null), s => Assert.Equal(0, Error(heart, s), Tolerance));
        Assert.True(read.Count(s => s.PulseRatePerMinute is not null) >= 0.8 * read.Length);
    }

    [Theory]
    [InlineData(36)]
    [InlineData(42)]
    public void TheSecondWaveOfASlowPulseComesLater(double perMinute)
    {
        var heart = Heart.Of(Seconds, (_, _) => 60 / perMinute, secondWave: 0.6) with { SecondWaveAfter = 0.38 };
        Assert.All(Read(heart), s => Assert.Equal(0, Error(heart, s), 1.5));
    }

    [Fact]
    public void TheRateAfterAMovementKnowsNothingOfTheBeatsInIt()
    {
        const double from = 20;
        const double to = 30;
        var heart = Heart.Of(Seconds, (_, _) => 0.5);
        (double, double) Shake(double t) => t > from && t < to ? (0.05 * Math.Sin(2 * Math.PI * 1.1 * t), 0.05 * Math.Sin(2 * Math.PI * 1.1 * t)) : default;
        var heard = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = heart.BloodAt, Movement = Shake }.Samples());
        var after = heard.Usable.Where(s => s.SecondIndex > to).ToArray();
        Assert.InRange(after.Count(s => s.PulseRatePerMinute is not null), 20, after.Length);
        Assert.All(after, s => Assert.Equal(120, s.PulseRatePerMinute ?? 120, Tolerance));
    }

    private static UsableSecond[] Read(Heart heart) =>
        [.. Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = heart.BloodAt }.Samples()).Usable.Where(s => s.SecondIndex >= FromSecond)];

    // The nearer of two countings: both are the mean rate of the same beats.
    private static double Error(Heart heart, UsableSecond second)
    {
        var end = second.SecondIndex + 1.0;
        var byBeats = second.PulseRatePerMinute!.Value - heart.RateBefore(end);
        var byTime = second.PulseRatePerMinute!.Value - heart.RateByTimeBefore(end);
        return Math.Abs(byBeats) < Math.Abs(byTime) ? byBeats : byTime;
    }
}
