using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Triage;

/// <summary>
/// A personal range replaces the bands. 88 to 92 % for people at risk of carbon dioxide retention, and clinical
/// assessment at three points below a target: British Thoracic Society guideline, Thorax 2017;72 Suppl 1.
/// </summary>
public sealed class TargetTests
{
    [Theory]
    [InlineData(88, false, AdviceLevel.Usual)]
    [InlineData(92, true, AdviceLevel.Usual)]
    [InlineData(92.001, false, AdviceLevel.Usual)]
    [InlineData(92.001, true, AdviceLevel.Call)]
    [InlineData(100, true, AdviceLevel.Call)]
    [InlineData(87.999, false, AdviceLevel.Call)]
    [InlineData(85.001, false, AdviceLevel.Call)]
    [InlineData(85, false, AdviceLevel.DoctorNow)]
    [InlineData(84.999, false, AdviceLevel.Emergency)]
    public void ATargetReplacesTheBands(double percent, bool onOxygen, AdviceLevel level)
    {
        var advice = Find.Advice(Find.Target(percent, 88, 92, onOxygen));
        Assert.Equal(level, advice.Level);
        Assert.True(advice.Speaks("Target"));
    }

    [Fact]
    public void AboveTheTargetIsSaid() =>
        Assert.Contains("above the range set for you", Find.Advice(Find.Target(96, 88, 92)).Text, StringComparison.Ordinal);

    [Theory]
    [InlineData(94, AdviceLevel.Usual)]
    [InlineData(93.9, AdviceLevel.Call)]
    [InlineData(91, AdviceLevel.DoctorNow)]
    public void AHighTargetIsStricterThanTheBands(double percent, AdviceLevel level) =>
        Assert.Equal(level, Find.Advice(Find.Target(percent, 94, 98)).Level);

    [Theory]
    [InlineData(84.9)]
    [InlineData(80)]
    public void UnderEightyFiveStaysAnEmergencyInsideALowTarget(double percent)
    {
        var advice = Find.Advice(Find.Target(percent, 80, 85));
        Assert.Equal(AdviceLevel.Emergency, advice.Level);
        Assert.True(advice.Speaks("SpO2"));
        Assert.True(advice.Speaks("Target"));
    }

    [Theory]
    [InlineData(Feeling.Breathless, AdviceLevel.DoctorNow)]
    [InlineData(Feeling.Severe, AdviceLevel.Emergency)]
    public void SymptomsStayWithATarget(Feeling feeling, AdviceLevel level) =>
        Assert.Equal(level, Find.Advice(Find.Target(90, 88, 92, feeling: feeling)).Level);

    [Fact]
    public void ASecondValueIsNoRuleInsideATarget() =>
        Assert.Equal(AdviceLevel.Usual, Find.Advice(Find.Target(91, 88, 92) with { Earlier = [new EarlierReading(91, 60)] }).Level);

    [Theory]
    [InlineData(92, 88)]
    [InlineData(90, 90)]
    public void AReversedTargetIsABug(double low, double high) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new TargetRange(low, high));
}
