using CsCheck;
using PulseStream.Simulation;
using PulseStream.Simulation.Blood;
using PulseStream.Simulation.Tracks;
using Xunit;

namespace PulseStream.Tests.Simulation;

public sealed class BeatTests
{
    // Half a sample at 500 Hz is 1 ms; on the flat top of the slope rounded counts move its highest place by another sample.
    private const double RiseToleranceSeconds = 0.003;

    [Theory]
    [InlineData(Rhythm.Regular, 0.2)]
    [InlineData(Rhythm.Irregular, 0.2)]
    [InlineData(Rhythm.Bigeminy, 0.2)]
    [InlineData(Rhythm.Regular, 0.7)]
    public void BeatTimesAreWhereInfraredFallsFastest(Rhythm rhythm, double secondWave)
    {
        var scenario = Streams.PulseAlone with { Rhythm = rhythm, SecondWave = secondWave, BeatVariationPercent = 1 };
        var (_, infrared) = Streams.Light(scenario);
        var slope = infrared.Skip(1).Zip(infrared, (after, before) => Math.Log(before / after)).ToArray();
        foreach (var beat in new SimulatedRecording(scenario).Beats().Where(b => b.Seconds is > 1 and < 29))
        {
            var around = Enumerable.Range((int)((beat.Seconds - 0.1) * 500), 100).MaxBy(i => slope[i]);
            Assert.Equal((around + 0.5) / 500, beat.Seconds, RiseToleranceSeconds);
        }
    }

    [Theory]
    [InlineData(Rhythm.Regular)]
    [InlineData(Rhythm.Respiratory)]
    [InlineData(Rhythm.Irregular)]
    [InlineData(Rhythm.Ectopic)]
    [InlineData(Rhythm.Bigeminy)]
    public void EveryRhythmKeepsTheMeanRate(Rhythm rhythm)
    {
        var beats = new SimulatedRecording(new Scenario { DurationSeconds = 3600, Rhythm = rhythm }).Beats().Count();
        // 4,320 beats; irregular intervals of deviation 14 % leave 0.2 %, sinus arrhythmia a half of its squared depth.
        Assert.Equal(1, beats / (72.0 * 60), 0.01);
    }

    [Fact]
    public void APulseStepTakesOneBeat()
    {
        var scenario = new Scenario { Pulse = ScenarioText.ParseTrack("--pulse", "60,step 130@30"), BeatVariationPercent = 0 };
        var beats = new SimulatedRecording(scenario).Beats().ToArray();
        Assert.All(beats.Where(b => b.Seconds < 30), b => Assert.Equal(1, b.IntervalSeconds, 1e-3));
        Assert.All(beats.Where(b => b.Seconds > 31), b => Assert.Equal(60 / 130.0, b.IntervalSeconds, 1e-3));
    }

    [Fact]
    public void IrregularIntervalsSpreadAsStated()
    {
        var scenario = new Scenario { DurationSeconds = 3600, Rhythm = Rhythm.Irregular, IrregularityPercent = 40 };
        var intervals = new SimulatedRecording(scenario).Beats().Select(b => b.IntervalSeconds * 72 / 60).ToArray();
        Assert.InRange(intervals.Min(), 0.5, 0.65);
        Assert.InRange(intervals.Max(), 1.35, 1.5);
    }

    [Fact]
    public void NoBeatShowsWhileTheFingerIsOff()
    {
        var scenario = new Scenario { Episodes = Streams.Episode("off:20-30") };
        Assert.DoesNotContain(new SimulatedRecording(scenario).Beats(), b => b.Seconds is > 20 and < 30);
    }

    [Fact]
    public void TheSamePhysiologyIsSeenAtEveryRate() =>
        Gen.Select(Gen.ULong, Gen.Int[0, 2].Select(i => new[] { 50.0, 100.0, 250.0 }[i])).Sample(
            (seed, rate) =>
            {
                var fine = new Scenario { Seed = seed, RateHz = 500, Noise = 0, Episodes = Streams.Episode("motion:1-4"), DurationSeconds = 5 };
                var (_, all) = Streams.Light(fine);
                var (_, some) = Streams.Light(fine with { RateHz = rate });
                return some.Select((x, i) => x - all[(int)(i * 500 / rate)]).All(d => Math.Abs(d) <= 1);
            },
            iter: 20);

    [Fact]
    public void ARateOffItsNominalMovesBeatsAndTracksInTheRecordingsTime()
    {
        var scenario = new Scenario
        {
            DurationSeconds = 102,
            RateOffPercent = 2,
            BeatVariationPercent = 0,
            Spo2 = Track.Step(97, 90, 50),
        };
        var recording = new SimulatedRecording(scenario);
        Assert.All(recording.Beats(), b => Assert.Equal(60 / 72.0 * 1.02, b.IntervalSeconds, 1e-6));
        Assert.Equal([97, 90], recording.Truth().Where(t => t.Second is 50 or 51).Select(t => t.Spo2Percent));
    }
}
