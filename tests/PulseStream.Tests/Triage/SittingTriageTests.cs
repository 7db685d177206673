using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Triage;

public sealed class SittingTriageTests
{
    private const int HourSeconds = 3600;

    private static SittingTriage Start(Feeling feeling = Feeling.Well, params EarlierReading[] history) =>
        new(Find.Policy, new Circumstances { Feeling = feeling }, history);

    [Fact]
    public void AnAdviceFollowsAReadingOnlyWhenTheLevelRises()
    {
        var triage = Start();
        Assert.Null(triage.Follow(Find.Reading(20, 97)));
        var recheck = triage.Follow(Find.Reading(30, 93));
        Assert.Equal(AdviceLevel.Recheck, recheck!.Level);
        Assert.Equal(30, recheck.SecondIndex);
        Assert.Null(triage.Follow(Find.Reading(40, 92)));
        Assert.Null(triage.Follow(Find.Reading(50, 96)));
        Assert.Equal(AdviceLevel.DoctorNow, triage.Follow(Find.Reading(60, 88))!.Level);
        Assert.Equal(AdviceLevel.Emergency, triage.Follow(Find.Reading(70, 84))!.Level);
        Assert.Null(triage.Follow(Find.Reading(80, 88)));
    }

    [Fact]
    public void AnAdviceFollowsEverySitting()
    {
        var advice = Start().Close(Find.Accepted(90, Find.Reading(70, 97)));
        Assert.Equal(AdviceLevel.Usual, advice.Level);
        Assert.Equal(90, advice.SecondIndex);
    }

    [Theory]
    [InlineData(89, AdviceLevel.DoctorNow)]
    [InlineData(84.5, AdviceLevel.Emergency)]
    public void AHigherValueNeverTakesBackAnUrgentLevel(double low, AdviceLevel level)
    {
        var triage = Start();
        triage.Follow(Find.Reading(20, low));
        Assert.Null(triage.Follow(Find.Reading(50, 91)));
        var advice = triage.Close(Find.Accepted(90, Find.Reading(50, 91), Find.Reading(20, low)));
        Assert.Equal(level, advice.Level);
        Assert.True(advice.Speaks("Held"));
        Assert.Contains($"Oxygen {low} percent", advice.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AMilderLevelMayFallWithTheReadingOfRecordButTheLowOneIsSaid()
    {
        var triage = Start();
        Assert.Equal(AdviceLevel.Recheck, triage.Follow(Find.Reading(20, 94))!.Level);
        var advice = triage.Close(Find.Accepted(90, Find.Reading(50, 96), Find.Reading(20, 94)));
        Assert.Equal(AdviceLevel.Usual, advice.Level);
        Assert.True(advice.Speaks("Lowest"));
        Assert.True(advice.RepeatNow);
    }

    [Fact]
    public void AnUrgentLevelEndsWithItsSitting()
    {
        var triage = Start();
        triage.Follow(Find.Reading(20, 88));
        triage.Close(Find.Unsettled(90, Find.Reading(20, 88)));
        Assert.Equal(AdviceLevel.Usual, triage.Close(Find.Accepted(300, Find.Reading(290, 97))).Level);
    }

    [Fact]
    public void AnUnsettledSittingIsJudgedByItsLowestReadingAndAskedForAgain()
    {
        var triage = Start();
        triage.Follow(Find.Reading(20, 92));
        triage.Follow(Find.Reading(40, 97));
        var advice = triage.Close(Find.Unsettled(90, Find.Reading(20, 92)));
        Assert.Equal(AdviceLevel.Recheck, advice.Level);
        Assert.True(advice.RepeatNow);
        Assert.True(advice.Speaks("Unsettled"));
        Assert.Contains("Measure again now", advice.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void ASittingWithoutAReadingAsksToTryAgainAndObeysSymptoms()
    {
        Assert.Equal(0, Start().Close(Find.WithoutReading(90)).RecheckAfterMinutes);
        Assert.Equal(AdviceLevel.Emergency, Start(Feeling.Severe).Close(Find.WithoutReading(90)).Level);
    }

    [Fact]
    public void ASittingWithThePulseAloneIsJudgedByIt()
    {
        var advice = Start().Close(Find.WithoutReading(90, pulse: 135));
        Assert.Equal(AdviceLevel.Call, advice.Level);
        Assert.True(advice.Speaks("Pulse"));
    }

    [Theory]
    [InlineData(29 * 60, AdviceLevel.Recheck)]
    [InlineData(HourSeconds, AdviceLevel.Call)]
    [InlineData(5 * HourSeconds, AdviceLevel.Recheck)]
    public void TheNextSittingSeesTheEarlierOneOfTheSession(int secondsLater, AdviceLevel level)
    {
        var triage = Start();
        triage.Follow(Find.Reading(80, 92));
        triage.Close(Find.Accepted(90, Find.Reading(80, 92)));
        Assert.Equal(level, triage.Follow(Find.Reading(80 + secondsLater, 93))!.Level);
        Assert.Equal(level, triage.Close(Find.Accepted(100 + secondsLater, Find.Reading(80 + secondsLater, 93))).Level);
    }

    [Fact]
    public void TheHistoryAgesWithTheSession()
    {
        var triage = Start(Feeling.Well, new EarlierReading(93, 29));
        Assert.Equal(AdviceLevel.Recheck, triage.Follow(Find.Reading(59, 92))!.Level);
        Assert.Equal(AdviceLevel.Call, triage.Follow(Find.Reading(60, 92))!.Level);
    }

    [Fact]
    public void ReadingsOfOneSittingAreNoSecondValues()
    {
        var triage = Start();
        triage.Follow(Find.Reading(20, 92));
        Assert.Null(triage.Follow(Find.Reading(20 + HourSeconds, 92)));
    }
}
