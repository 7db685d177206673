using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Triage;

/// <summary>The default bands, common practice for adults at home: each edge, each feeling.</summary>
public sealed class BandTests
{
    [Theory]
    [InlineData(100, AdviceLevel.Usual)]
    [InlineData(95, AdviceLevel.Usual)]
    [InlineData(94.999, AdviceLevel.Recheck)]
    [InlineData(90, AdviceLevel.Recheck)]
    [InlineData(89.999, AdviceLevel.DoctorNow)]
    [InlineData(85, AdviceLevel.DoctorNow)]
    [InlineData(84.999, AdviceLevel.Emergency)]
    [InlineData(0, AdviceLevel.Emergency)]
    public void BandsAreHalfOpenOnTheUnroundedValue(double percent, AdviceLevel level)
    {
        Assert.Equal(level, Find.Advice(Find.Spo2(percent, Feeling.Well)).Level);
        Assert.Equal(level, Find.Advice(Find.Spo2(percent, Feeling.NotAsked)).Level);
    }

    [Theory]
    [InlineData(100, AdviceLevel.Recheck, 240)]
    [InlineData(95, AdviceLevel.Recheck, 240)]
    [InlineData(94.999, AdviceLevel.Call, null)]
    [InlineData(90, AdviceLevel.Call, null)]
    [InlineData(89.999, AdviceLevel.DoctorNow, null)]
    [InlineData(84.999, AdviceLevel.Emergency, null)]
    public void FeelingPoorlyRaisesTheUpperBands(double percent, AdviceLevel level, int? minutes)
    {
        var advice = Find.Advice(Find.Spo2(percent, Feeling.Poorly));
        Assert.Equal(level, advice.Level);
        Assert.Equal(minutes, advice.RecheckAfterMinutes);
    }

    [Fact]
    public void NinetyToNinetyFiveIsCheckedAgainAfterAnHourOfCare()
    {
        var advice = Find.Advice(Find.Spo2(92));
        Assert.Equal(60, advice.RecheckAfterMinutes);
        Assert.Contains("sit down, rest five minutes, warm the hand", advice.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void TheValueIsNeverShownAcrossTheEdgeThatItDidNotReach()
    {
        var advice = Find.Advice(Find.Spo2(94.96));
        Assert.Contains("SpO2 94.9 % lies in [90, 95), well: recheck", advice.Because, StringComparer.Ordinal);
        Assert.Contains("Oxygen 94.9 percent", advice.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(97, AdviceLevel.DoctorNow)]
    [InlineData(91, AdviceLevel.DoctorNow)]
    [InlineData(84, AdviceLevel.Emergency)]
    public void BreathlessAtRestIsADoctorNowWhateverTheNumber(double percent, AdviceLevel level)
    {
        var advice = Find.Advice(Find.Spo2(percent, Feeling.Breathless));
        Assert.Equal(level, advice.Level);
        Assert.True(advice.Speaks("Feeling"));
    }

    [Theory]
    [InlineData(100)]
    [InlineData(91)]
    [InlineData(50)]
    public void SevereIsAnEmergencyWhateverTheNumber(double percent) =>
        Assert.Equal(AdviceLevel.Emergency, Find.Advice(Find.Spo2(percent, Feeling.Severe)).Level);

    [Fact]
    public void NotAskedAsksAndWellDoesNot()
    {
        Assert.All([97.0, 92, 88, 70], percent => Assert.Contains("How do you feel?", Find.Advice(Find.Spo2(percent, Feeling.NotAsked)).Text, StringComparison.Ordinal));
        Assert.All([97.0, 92, 88, 70], percent => Assert.DoesNotContain("How do you feel?", Find.Advice(Find.Spo2(percent, Feeling.Well)).Text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(-0.001)]
    [InlineData(100.001)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void ASaturationOutsideItsLimitsIsABug(double percent)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Find.Spo2(percent));
        Assert.Throws<ArgumentOutOfRangeException>(() => new EarlierReading(percent, 60));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TargetRange(percent, 92));
        Assert.Throws<ArgumentOutOfRangeException>(() => Find.Spo2(95) with { LowestSpo2Percent = percent });
        Assert.Throws<ArgumentOutOfRangeException>(() => Find.Spo2(95) with { LaterSpo2Percent = percent });
        Assert.Throws<ArgumentOutOfRangeException>(() => Find.Policy.BandOf(percent));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void OtherNumbersThatCannotBeAreBugsToo(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Findings { PulseRatePerMinute = value });
        Assert.Throws<ArgumentOutOfRangeException>(() => new EarlierReading(95, value));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Circumstances { DeviceArmsPercent = value });
        Assert.Throws<ArgumentOutOfRangeException>(() => DeviceAccuracy.Widen(default, value));
    }
}
