using PulseStream.Readings;
using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Triage;

/// <summary>A second value, an interval or a lower reading near something more severe.</summary>
public sealed class NearnessTests
{
    [Theory]
    [InlineData(29.9, AdviceLevel.Recheck)]
    [InlineData(30, AdviceLevel.Call)]
    [InlineData(60, AdviceLevel.Call)]
    [InlineData(240, AdviceLevel.Call)]
    [InlineData(240.1, AdviceLevel.Recheck)]
    public void ASecondValueInTheBandCallsWithinItsWindow(double minutes, AdviceLevel level)
    {
        var advice = Find.Advice(Find.Spo2(92) with { Earlier = [new EarlierReading(93, minutes)] });
        Assert.Equal(level, advice.Level);
        Assert.Equal(level == AdviceLevel.Call, advice.Speaks("Second-value"));
    }

    [Theory]
    [InlineData(95, 92)]
    [InlineData(89.9, 92)]
    [InlineData(92, 95)]
    public void ValuesInDifferentBandsAreNoSecondValue(double earlier, double now) =>
        Assert.False(Find.Advice(Find.Spo2(now) with { Earlier = [new EarlierReading(earlier, 60)] }).Speaks("Second-value"));

    [Fact]
    public void ChecksInQuickSuccessionDoNotEscapeTheSecondValueRule()
    {
        EarlierReading[] earlier = [new(92, 20), new(92, 40)];
        var advice = Find.Advice(Find.Spo2(92) with { Earlier = earlier });
        Assert.Equal(AdviceLevel.Call, advice.Level);
        Assert.Equal(advice.Because, Find.Advice(Find.Spo2(92) with { Earlier = [.. earlier.Reverse()] }).Because);
    }

    [Theory]
    [InlineData(91, 89.9, AdviceLevel.Recheck, true)]
    [InlineData(91, 90, AdviceLevel.Recheck, false)]
    [InlineData(96, 94.9, AdviceLevel.Usual, true)]
    [InlineData(86, 84, AdviceLevel.DoctorNow, true)]
    [InlineData(80, 70, AdviceLevel.Emergency, false)]
    public void AnIntervalThatReachesASevererBandAsksForARepeatAndLeavesTheLevel(double percent, double low, AdviceLevel level, bool repeats)
    {
        var advice = Find.Advice(Find.Spo2(percent) with { Spo2 = new Saturation(percent, low, 100) });
        Assert.Equal(level, advice.Level);
        Assert.Equal(repeats, advice.RepeatNow);
        Assert.Equal(repeats, advice.Speaks("Interval"));
        Assert.Equal(repeats, advice.Text.Contains("Measure again now", StringComparison.Ordinal) || advice.Text.Contains("then measure again", StringComparison.Ordinal));
    }

    [Fact]
    public void OnOxygenTheUpperEndCanBeTheWorseOne()
    {
        var findings = Find.Target(91, 88, 92, onOxygen: true) with { Spo2 = new Saturation(91, 89, 93) };
        Assert.True(Find.Advice(findings).RepeatNow);
        Assert.False(Find.Advice(findings with { Circumstances = findings.Circumstances with { OnOxygen = false } }).RepeatNow);
    }

    [Fact]
    public void ADevicesAccuracyWidensTheIntervalInQuadrature()
    {
        // Halves 3 and 0.8 with 1.96 · A_rms = 4: √(3² + 4²) = 5 and √(0.8² + 4²) = 4.0792…
        const double tolerance = 1e-12;
        var widened = DeviceAccuracy.Widen(new Saturation(93, 90, 93.8), 4 / 1.96);
        Assert.Equal(88, widened.LowPercent, tolerance);
        Assert.Equal(93 + Math.Sqrt(16.64), widened.HighPercent, tolerance);
        Assert.Equal(new Saturation(93, 90, 93.8), DeviceAccuracy.Widen(new Saturation(93, 90, 93.8), 0));
        Assert.Equal(new Saturation(50, 0, 100), DeviceAccuracy.Widen(new Saturation(50, 50, 50), 60));
    }

    [Fact]
    public void ADevicesAccuracyIsSaidAndCanAskForARepeat()
    {
        var exact = Find.Advice(Find.Spo2(97));
        var rough = Find.Advice(Find.Spo2(97) with { Circumstances = new Circumstances { Feeling = Feeling.Well, DeviceArmsPercent = 2 } });
        Assert.False(exact.RepeatNow);
        Assert.True(rough.RepeatNow);
        Assert.Equal(exact.Level, rough.Level);
        Assert.Contains("can be 3.9 points off", rough.Text, StringComparison.Ordinal);
        Assert.Contains("Interval 93 to 100 % reaches recheck: repeat now", rough.Because, StringComparer.Ordinal);
    }

    [Fact]
    public void ALowerAcceptedReadingIsNeverHidden()
    {
        var advice = Find.Advice(Find.Spo2(96) with { LowestSpo2Percent = 93.5 });
        Assert.Equal(AdviceLevel.Usual, advice.Level);
        Assert.True(advice.RepeatNow);
        Assert.True(advice.Speaks("Lowest"));
        Assert.Contains("93.5 percent, was accepted too", advice.Text, StringComparison.Ordinal);
        Assert.False(Find.Advice(Find.Spo2(97) with { LowestSpo2Percent = 96 }).Speaks("Lowest"));
    }
}
