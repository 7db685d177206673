using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Triage;

/// <summary>Answers to how the person feels, given while a session runs.</summary>
public sealed class AnswerTests
{
    private readonly SittingTriage _triage = new(Find.Policy, new Circumstances(), []);

    [Fact]
    public void AnAnswerJudgesTheReadingInForceAgain()
    {
        _triage.Follow(Find.Reading(20, 97));

        Assert.Equal(AdviceLevel.DoctorNow, _triage.Answer(Feeling.Breathless)!.Level);
        Assert.Equal(AdviceLevel.Usual, _triage.Answer(Feeling.Well)!.Level);
        Assert.Equal(AdviceLevel.Emergency, _triage.Answer(Feeling.Severe)!.Level);
    }

    [Fact]
    public void BeforeAnyReadingOnlyAnUrgentAnswerIsAdvisedOn()
    {
        Assert.Null(_triage.Answer(Feeling.Well));
        Assert.Null(_triage.Answer(Feeling.Poorly));
        Assert.Equal(AdviceLevel.Emergency, _triage.Answer(Feeling.Severe)!.Level);
    }

    [Fact]
    public void NoAnswerTakesBackWhatANumberLedTo()
    {
        _triage.Follow(Find.Reading(20, 84));
        _triage.Follow(Find.Reading(40, 96));

        Assert.Equal(AdviceLevel.Emergency, _triage.Answer(Feeling.Well)!.Level);
        Assert.Equal(AdviceLevel.Emergency, _triage.Close(Find.Accepted(90, Find.Reading(40, 96), Find.Reading(20, 84))).Level);
    }

    [Fact]
    public void TheAnswerCountsAtTheEndOfItsSitting()
    {
        _triage.Answer(Feeling.Poorly);
        var asked = _triage.Close(Find.Accepted(90, Find.Reading(70, 93)));
        Assert.Equal(AdviceLevel.Call, asked.Level);
    }

    [Fact]
    public void TheQuestionIsOpenAgainInTheNextSitting()
    {
        _triage.Follow(Find.Reading(20, 97));
        _triage.Answer(Feeling.Well);
        _triage.Close(Find.Accepted(90, Find.Reading(70, 97)));
        Assert.Equal(Feeling.Well, _triage.Feeling);

        _triage.Follow(Find.Reading(120, 97));
        Assert.Equal(Feeling.NotAsked, _triage.Feeling);
        Assert.Contains("How do you feel?", _triage.Close(Find.Accepted(190, Find.Reading(170, 97))).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AnAnswerBetweenTwoSittingsCountsForBoth()
    {
        _triage.Close(Find.Accepted(90, Find.Reading(70, 97)));
        Assert.Equal(AdviceLevel.DoctorNow, _triage.Answer(Feeling.Breathless)!.Level);
        Assert.Equal(AdviceLevel.DoctorNow, _triage.Follow(Find.Reading(120, 97))!.Level);
    }

    [Fact]
    public void WhatWasToldAtTheStartHoldsForEverySitting()
    {
        var triage = new SittingTriage(Find.Policy, new Circumstances { Feeling = Feeling.Well }, []);
        triage.Follow(Find.Reading(20, 97));
        triage.Close(Find.Accepted(90, Find.Reading(70, 97)));
        triage.Follow(Find.Reading(120, 97));
        Assert.Equal(Feeling.Well, triage.Feeling);
    }
}
