using PulseStream.Simulation;
using PulseStream.Simulation.Blood;
using PulseStream.Simulation.Episodes;
using PulseStream.Simulation.Tracks;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>The rate of pulses whose second waves, early beats or a finger that comes on pass for beats, on simulated streams.</summary>
public sealed class RateOfSecondWavesTests
{
    // The second from which a quiet finger is read.
    private const int StartSeconds = 12;

    // The step that a finger leaves when it comes on has rises of its own.
    [Theory]
    [InlineData(10, 97.3)]
    [InlineData(4, 40)]
    [InlineData(6, 72)]
    public void AFingerThatComesBackHasItsOwnBeatsOnly(ulong seed, double pulsePerMinute)
    {
        var scenario = new Scenario
        {
            Seed = seed,
            RateHz = 200,
            Pulse = Track.Constant(pulsePerMinute),
            Noise = 9.5e-5,
            Episodes = [new FingerOffEpisode(20, 40, 0.03)],
        };
        var told = Heard.Of(scenario).Usable.Where(s => s.SecondIndex > 40 && s.PulseRatePerMinute is not null).ToArray();
        Assert.NotEmpty(told);
        Assert.All(told, s => Assert.InRange(s.PulseRatePerMinute!.Value, 0.9 * pulsePerMinute, 1.1 * pulsePerMinute));
    }

    // The second bell lies at a share of the beat: in a slow pulse later than any valve closes.
    [Theory]
    [InlineData(38, 0.3)]
    [InlineData(41, 0.45)]
    [InlineData(44, 0.6)]
    [InlineData(37, 0.36)]
    [InlineData(37, 0.59)]
    [InlineData(38.3, 0.61)]
    public void ALateSecondWaveOfASlowPulseIsNoBeat(double pulsePerMinute, double secondWave)
    {
        var heard = Heard.Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave });
        Assert.InRange(heard.Readings.First().SecondIndex, 0, StartSeconds);
        Assert.All(heard.Usable.Where(s => s.SecondIndex >= StartSeconds), s => Assert.InRange(s.PulseRatePerMinute ?? pulsePerMinute, 0.95 * pulsePerMinute, 1.05 * pulsePerMinute));
    }

    // What repeats is two beats long, up to two seconds, and the full one has a strong second wave where the weak one begins.
    [Theory]
    [InlineData(64, 0.587)]
    [InlineData(66, 0.36)]
    [InlineData(87, 0.47)]
    [InlineData(97.5, 0.05)]
    public void BigeminyOfAnyShapeIsReadAndNotHalved(double pulsePerMinute, double secondWave)
    {
        var heard = Heard.Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave, Rhythm = Rhythm.Bigeminy });
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.True(settled.Count(s => s.IsUsable) >= 0.9 * settled.Length);
        Assert.All(settled, s => Assert.InRange(s.Usable?.PulseRatePerMinute ?? pulsePerMinute, 0.9 * pulsePerMinute, 1.1 * pulsePerMinute));
    }

    // The early beat rises from the second wave of the one before and may not show; the pause behind it does.
    [Theory]
    [InlineData(93.5, 0.5)]
    [InlineData(70, 0.61)]
    public void NoRateIsToldWhereAPauseMayHideAnEarlyBeat(double pulsePerMinute, double secondWave)
    {
        var heard = Heard.Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave, Rhythm = Rhythm.Ectopic });
        var told = heard.Usable.Where(s => s.SecondIndex >= StartSeconds && s.PulseRatePerMinute is not null).ToArray();
        var right = told.Count(s => Math.Abs(s.PulseRatePerMinute!.Value - pulsePerMinute) <= 5);
        Assert.True(right >= 9 && right >= 0.9 * told.Length, string.Join(' ', told.Select(s => $"{s.PulseRatePerMinute:F1}")));
    }

    // What repeats every 1.67 s has a beat in each period; second waves that look like beats now and then make others of it.
    [Theory]
    [InlineData(0.7, 2)]
    [InlineData(0.9, 1)]
    public void NoRateIsToldThatThePeriodContradicts(double secondWave, ulong seed)
    {
        var scenario = new Scenario { Seed = seed, RateHz = 50, Pulse = Track.Constant(36), SecondWave = secondWave, Rhythm = Rhythm.Respiratory };
        var heard = Heard.Of(scenario).Usable.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.All(heard, s => Assert.InRange(s.PulseRatePerMinute ?? 36, 33, 39));
        Assert.True(heard.Count(s => s.PulseRatePerMinute is not null) >= 0.75 * heard.Length);
    }

    // Bent by movement, or laid out by the beat each with its second wave, a slow pulse seems to beat twice as fast.
    [Theory]
    [InlineData(39.45, 0.861, MotionKind.Rhythmic, 0.697, 0.915, 0.766, 7)]
    [InlineData(37.57, 0.806, MotionKind.Broadband, 0.749, 2.62, 0.636, 20)]
    public void TheSecondWaveOfASlowPulseBesideMovementIsNoBeat(
        double pulsePerMinute, double secondWave, MotionKind kind, double size, double hz, double ratio, ulong seed)
    {
        var heard = Heard.Of(new()
        {
            Seed = seed,
            RateHz = 50,
            Pulse = Track.Constant(pulsePerMinute),
            Perfusion = Track.Constant(2),
            Spo2 = Track.Constant(90),
            SecondWave = secondWave,
            RespirationPercent = 0.2,
            BaselinePercent = 0.3,
            Noise = 2e-5,
            Episodes = [new MotionEpisode(20, 60, kind, size, hz, ratio, 0.05)],
        });
        Assert.DoesNotContain(heard.Usable, s => s.PulseRatePerMinute > 1.5 * pulsePerMinute);
        Assert.Contains(heard.Usable, s => s.SecondIndex is > 28 and < 60);
    }

    // The second wave has a front of its own, and a count that takes it for a beat gets two intervals that differ threefold.
    [Theory]
    [InlineData(0.35, 0.7)]
    [InlineData(0.4, 0.8)]
    public void TheTwoWavesOfASlowPulseAreNotTwoBeats(double delaySeconds, double height)
    {
        const double pulsePerMinute = 37.8;
        double Blood(double t)
        {
            var since = t % (60 / pulsePerMinute);
            return Bell(since - 0.15) + (height * Bell(since - 0.15 - delaySeconds));
        }

        static double Bell(double seconds) => Math.Exp(-0.5 * seconds * seconds / (0.08 * 0.08));
        var heard = Heard.Of(25, new Finger { RateHz = 25, Seconds = 60, Blood = Blood }.Samples());
        Assert.All(heard.Usable, s => Assert.InRange(s.PulseRatePerMinute ?? pulsePerMinute, 0.9 * pulsePerMinute, 1.1 * pulsePerMinute));
    }
}
