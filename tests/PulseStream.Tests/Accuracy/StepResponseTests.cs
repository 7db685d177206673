using PulseStream.Accuracy;
using PulseStream.Accuracy.Responses;
using PulseStream.Accuracy.Runs;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Accuracy;

public sealed class StepResponseTests
{
    [Theory]
    [InlineData(8, 3, 0, 0.2)]
    [InlineData(4, 0, 0, 0.2)]
    [InlineData(16, 5, 0.1, 1.5)]
    public void ARunningMeanIsRecognised(double meanSeconds, double deadSeconds, double noise, double within)
    {
        var found = StepResponses.Of(Shown(meanSeconds, deadSeconds, noise), Quantity.Saturation, Shown(0.01, 0, 0), []);

        Assert.Equal(2, found.Count);
        Assert.Equal((97.0, 88.0), (Math.Round(found[0].From), Math.Round(found[0].To)));
        Assert.All(found, step => Assert.Equal(meanSeconds, step.AveragingSeconds, within + 0.3));
        Assert.All(found, step => Assert.Equal(0.8 * meanSeconds, step.RiseSeconds, within));
        Assert.All(found, step => Assert.Equal(deadSeconds + (meanSeconds / 2), step.DelaySeconds, within + 0.5));
        Assert.All(found, step => Assert.Equal(0, step.Overshoot, 0.3));
        Assert.Equal(60, found[0].At, 0.6);
    }

    [Fact]
    public void WithoutAReferenceTheStepIsWhereTheChangeBegins()
    {
        var step = StepResponses.Of(Shown(8, 3, 0), Quantity.Saturation, null, [])[0];

        Assert.Equal(63, step.At, 0.3);
        Assert.Equal(4, step.DelaySeconds, 0.3);
    }

    [Fact]
    public void AToldStepCounts() =>
        Assert.Equal(7, StepResponses.Of(Shown(8, 3, 0), Quantity.Saturation, null, [60, 180])[0].DelaySeconds, 0.3);

    [Fact]
    public void OvershootIsToldInItsOwnUnit()
    {
        double[] times = [.. Enumerable.Range(0, 200).Select(i => (double)i)];
        var course = new TimedValues(times, [.. times.Select(t => t < 60 ? 97 : t < 62 ? 92 : t < 70 ? 85 : 88)]);

        var step = Assert.Single(StepResponses.Of(course, Quantity.Saturation, null, []));

        Assert.Equal(3, step.Overshoot, 0.01);
        Assert.Equal(100 / 3.0, step.OvershootPercent, 0.2);
    }

    [Fact]
    public void ASlowDriftIsNoStep()
    {
        double[] times = [.. Enumerable.Range(0, 600).Select(i => (double)i)];

        Assert.Empty(StepResponses.Of(new(times, [.. times.Select(t => 97 - (t / 60))]), Quantity.Saturation, null, []));
    }

    [Theory]
    [InlineData(12, 20)]
    [InlineData(12, 90)]
    [InlineData(20, 300)]
    public void ARampIsFollowedWithADelay(double points, double seconds)
    {
        double[] times = [.. Enumerable.Range(0, 600).Select(i => (double)i)];
        double Truth(double t) => 97 - (points * Math.Clamp((t - 100) / seconds, 0, 1));
        var reference = new TimedValues(times, [.. times.Select(Truth)]);
        var course = new TimedValues(times, [.. times.Select(t => Math.Round(Truth(t - 8), 1))]);

        var ramp = Assert.Single(StepResponses.Of(course, Quantity.Saturation, reference, []));

        Assert.Equal(8, ramp.DelaySeconds, 0.5);
        Assert.Equal(0.8 * seconds, ramp.RiseSeconds, 0.05 * seconds);
        Assert.InRange(ramp.AveragingSeconds, 0, 0.3 * seconds);
    }

    [Fact]
    public void ARecordingWithAKnownStepIsRunThroughThePipeline()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("simulate", folder["step.csv"], "--seconds", "90", "--spo2", "97,step 88@45", "--pulse", "72", "--quiet");

        var run = ProgramRun.Of("response", folder["step.csv"], "--reference", folder["step.truth.csv"], "--format", "ndjson", "--quiet");

        Assert.Equal(0, run.Status);
        var step = Assert.Single(run.Objects("response"));
        Assert.Equal("spo2", step.GetProperty("quantity").GetString());
        Assert.Equal(45, step.GetProperty("at").GetDouble(), 0.1);
        Assert.InRange(step.GetProperty("delaySeconds").GetDouble(), 1, 8);
        Assert.InRange(step.GetProperty("averagingSeconds").GetDouble(), 0.5, 9);
    }

    [Theory]
    [InlineData("step.hea")]
    [InlineData("step.edf")]
    public void ARecordingMayBeInAnyFormatOfReplay(string name)
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("simulate", folder["step.csv"], "--seconds", "90", "--spo2", "97,step 88@45", "--pulse", "72", "--quiet");
        ProgramRun.Of("convert", folder["step.csv"], folder[name], "--quiet");

        var expected = ProgramRun.Of("response", folder["step.csv"], "--format", "ndjson", "--quiet");
        var run = ProgramRun.Of("response", folder[name], "--format", "ndjson", "--quiet");

        Assert.Equal((0, ""), (run.Status, run.Error));
        var (told, found) = (Assert.Single(expected.Objects("response")), Assert.Single(run.Objects("response")));
        Assert.Equal(told.GetProperty("at").GetDouble(), found.GetProperty("at").GetDouble(), 0.05);
        Assert.Equal(told.GetProperty("riseSeconds").GetDouble(), found.GetProperty("riseSeconds").GetDouble(), 0.05);
    }

    [Fact]
    public void SaturationAndPulseAreToldInOrderOfTime()
    {
        using var folder = new TemporaryFolder();
        var text = "time_s,spo2,pulse\n" + string.Concat(Enumerable.Range(0, 200).Select(i => $"{i},{(i < 120 ? 97 : 90)},{(i < 60 ? 70 : 110)}\n"));

        var run = ProgramRun.Of("response", folder.Write("both.csv", text), "--format", "ndjson");

        Assert.Equal(["pulse", "spo2"], run.Objects("response").Select(step => step.GetProperty("quantity").GetString()!), StringComparer.Ordinal);
        Assert.Contains("Pulse rate at 59.", ProgramRun.Of("response", folder["both.csv"]).Output, StringComparison.Ordinal);
    }

    private static TimedValues Shown(double meanSeconds, double deadSeconds, double noise)
    {
        var chance = new Random(1);
        double[] times = [.. Enumerable.Range(0, 300).Select(i => (double)i)];
        return new(times, [.. times.Select(t => MeanOver(t - deadSeconds, meanSeconds) + (noise * SimulatedStudies.Normal(chance)))]);
    }

    private static double MeanOver(double t, double length) =>
        Enumerable.Range(0, 400).Average(i => t - (length * (i + 0.5) / 400) is var at && at < 60 ? 97 : at < 180 ? 88.0 : 95);
}
