using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Triage;

/// <summary>Resting pulse of adults 60 to 100, and limits of the policy at 40 and 130: common practice.</summary>
public sealed class PulseTests
{
    [Theory]
    [InlineData(60)]
    [InlineData(72)]
    [InlineData(100)]
    public void AUsualPulseIsNoRule(double pulse)
    {
        var advice = Find.Advice(Find.Spo2(97) with { PulseRatePerMinute = pulse });
        Assert.Equal(AdviceLevel.Usual, advice.Level);
        Assert.False(advice.Speaks("Pulse"));
    }

    [Theory]
    [InlineData(59.9)]
    [InlineData(100.1)]
    [InlineData(40)]
    [InlineData(130)]
    public void AnUnusualPulseIsSaidAndRaisesNothing(double pulse)
    {
        var advice = Find.Advice(Find.Spo2(97) with { PulseRatePerMinute = pulse });
        Assert.Equal(AdviceLevel.Usual, advice.Level);
        Assert.True(advice.Speaks("Pulse"));
        Assert.Contains("outside the usual 60 to 100", advice.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(39.9, 97, AdviceLevel.Call)]
    [InlineData(130.1, 97, AdviceLevel.Call)]
    [InlineData(0, 92, AdviceLevel.Call)]
    [InlineData(150, 88, AdviceLevel.DoctorNow)]
    [InlineData(150, 80, AdviceLevel.Emergency)]
    public void APulseBeyondTheLimitsRaisesToCallAtLeast(double pulse, double percent, AdviceLevel level)
    {
        var advice = Find.Advice(Find.Spo2(percent) with { PulseRatePerMinute = pulse });
        Assert.Equal(level, advice.Level);
        Assert.True(advice.Speaks("Pulse"));
        Assert.True(advice.Speaks("SpO2"));
        Assert.Null(advice.RecheckAfterMinutes);
    }

    [Theory]
    [InlineData(72, AdviceLevel.Usual)]
    [InlineData(110, AdviceLevel.Usual)]
    [InlineData(131, AdviceLevel.Call)]
    public void WithoutRedLightTheAdviceSpeaksOfThePulseAlone(double pulse, AdviceLevel level)
    {
        var advice = Find.Advice(new Findings { PulseRatePerMinute = pulse });
        Assert.Equal(level, advice.Level);
        Assert.True(advice.Speaks("Pulse"));
        Assert.False(advice.Speaks("SpO2"));
        Assert.Contains("oxygen was not measured", advice.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Feeling.NotAsked, AdviceLevel.Recheck, 0)]
    [InlineData(Feeling.Poorly, AdviceLevel.Recheck, 0)]
    [InlineData(Feeling.Breathless, AdviceLevel.DoctorNow, null)]
    [InlineData(Feeling.Severe, AdviceLevel.Emergency, null)]
    public void WithoutAnyReadingItAsksToTryAgainAndObeysSymptoms(Feeling feeling, AdviceLevel level, int? minutes)
    {
        var advice = Find.Advice(new Findings { Circumstances = new Circumstances { Feeling = feeling } });
        Assert.Equal(level, advice.Level);
        Assert.Equal(minutes, advice.RecheckAfterMinutes);
        Assert.True(advice.RepeatNow);
        Assert.True(advice.Speaks("No-reading"));
        Assert.Contains("measure again", advice.Text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void NoNumberIsNoBetterNewsThanTheBestOne()
    {
        var advice = Find.Advice(new Findings { PulseRatePerMinute = 72, Circumstances = new Circumstances { Feeling = Feeling.Poorly } });
        Assert.Equal(AdviceLevel.Recheck, advice.Level);
        Assert.Equal(240, advice.RecheckAfterMinutes);
    }
}
