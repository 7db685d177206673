using PulseStream.Readings;
using PulseStream.Simulation;
using PulseStream.Simulation.Episodes;
using PulseStream.Simulation.Tracks;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>What is taken for a pulse and what is not, on simulated streams whose pulse has the published shape of two bells.</summary>
public sealed class WaveTests
{
    // The seconds from which a quiet finger is read, and what a reading may be off, points.
    private const int StartSeconds = 12;
    private const double PercentTolerance = 0.6;

    [Theory]
    [InlineData(35, 0.3)]
    [InlineData(60, 0.0)]
    [InlineData(60, 0.75)]
    [InlineData(200, 0.2)]
    public void APulseOfAnyShapeIsRead(double pulsePerMinute, double secondWave)
    {
        var heard = Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave });
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.IsType<UsableSecond>(s));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    [Theory]
    [InlineData(40)]
    [InlineData(75)]
    public void AWarmingFingerIsReadAllTheTime(double pulsePerMinute)
    {
        var heard = Of(new() { Pulse = Track.Constant(pulsePerMinute), Perfusion = Track.Ramp(0.3, 3, 10, 50) });
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.IsType<UsableSecond>(s));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void SomethingThatStirsByChanceIsNoFinger(ulong seed) =>
        Assert.Empty(Of(new() { Seed = seed, Episodes = [new LifelessEpisode(double.NegativeInfinity, double.PositiveInfinity, StirPercent: 0.3)] }).Readings);

    [Fact]
    public void RhythmicMovementManyTimesThePulseIsNotTakenForItHoweverLongItLasts()
    {
        var motion = new MotionEpisode(20, 60, MotionKind.Rhythmic, Size: 20, Hz: 1.3, Ratio: 0.45, Apart: 0);
        var heard = Of(new() { Spo2 = Track.Constant(84), Pulse = Track.Constant(140), Episodes = [motion] });
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - 84) > 3);
    }

    [Fact]
    public void TheMomentAFingerComesOnIsNoPulse()
    {
        var scenario = new Scenario { Seed = 10, RateHz = 200, Episodes = [new FingerOffEpisode(20, 40, 0.03)] };
        Assert.DoesNotContain(Of(scenario).Usable, s => s.SecondIndex is > 20 and < 42);
    }

    [Fact]
    public void AFingerThatIsPulledHalfOffIsNotTakenForAnother()
    {
        var heard = Of(new() { Spo2 = Track.Constant(80), Episodes = [new HalfOffEpisode(20, 45, Leak: 0.5, RedLeak: 0.8)] });
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - 80) > 3);
    }

    private static Heard Of(Scenario scenario)
    {
        var recording = new SimulatedRecording(scenario);
        var heard = new Heard();
        var reader = new FingerReader(recording.Header, CalibrationCurve.TextbookLine, new ReadingOptions());
        foreach (var block in recording.Blocks(1000))
        {
            reader.Read(block, heard);
        }

        reader.Finish(heard);
        return heard;
    }
}
