using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>A verdict on pairs in the light of the windows before.</summary>
public sealed class PairCourseTests
{
    [Fact]
    public void OneWindowInNineMayDiffer() => Assert.Equal("SecondWave", After(PairKind.SecondWave, 8).Settle(PairKind.EarlyBeat).ToString());

    [Fact]
    public void WindowsThatDifferTellNothing()
    {
        var course = After(PairKind.SecondWave, 4);
        course.Take(PairKind.EarlyBeat, false, isUneven: false);
        Assert.Equal("Either", course.Settle(PairKind.EarlyBeat).ToString());
    }

    [Fact]
    public void AWindowWithoutPairsHasNone() => Assert.Equal("None", After(PairKind.SecondWave, 8).Settle(PairKind.None).ToString());

    [Fact]
    public void AnotherRhythmIsBelievedOnceTheWindowsShareNoBeatWithTheOld()
    {
        var course = After(PairKind.SecondWave, 8);
        for (var k = 0; k < 8; k++)
        {
            course.Take(PairKind.EarlyBeat, false, isUneven: false);
        }

        Assert.Equal("EarlyBeat", course.Settle(PairKind.EarlyBeat).ToString());
    }

    // Chance that goes one way in eight windows that share their beats does so hardly in the eight before.
    [Fact]
    public void SecondWavesAreInDoubtWhileTheWindowsBeforeDiffered()
    {
        var course = After(PairKind.SecondWave, 4);
        for (var k = 0; k < 4; k++)
        {
            course.Take(PairKind.EarlyBeat, false, isUneven: false);
        }

        for (var k = 0; k < 8; k++)
        {
            course.Take(PairKind.SecondWave, false, isUneven: false);
        }

        Assert.Equal("SecondWave", course.Settle(PairKind.SecondWave).ToString());
        Assert.True(course.IsDoubtful);
        for (var k = 0; k < 8; k++)
        {
            course.Take(PairKind.SecondWave, false, isUneven: false);
        }

        Assert.False(course.IsDoubtful);
    }

    // What two windows could not tell has not become nothing where a third, which shares their beats, does not show it.
    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    public void WhatDoesNotShowNowStaysUnsureWhileWindowsThatShareItsBeatsWere(int windows, bool wasUnsure)
    {
        var course = After(PairKind.Either, windows);
        Assert.Equal(wasUnsure, course.WasUnsure);
        for (var k = 0; k < 8; k++)
        {
            course.Take(PairKind.None, false, isUneven: false);
        }

        Assert.False(course.WasUnsure);
    }

    [Fact]
    public void EvenSecondWavesAreKnownOnceSeenTwice()
    {
        var course = new PairCourse();
        course.Take(PairKind.SecondWave, true, isUneven: false);
        Assert.False(course.IsEvenKnown);
        course.Take(PairKind.SecondWave, true, isUneven: false);
        Assert.True(course.IsEvenKnown);
        course.Restart();
        Assert.False(course.IsEvenKnown);
    }

    [Fact]
    public void SecondWavesWithoutARhythmAreKnownOnceSeenThreeTimes()
    {
        var course = new PairCourse();
        course.Take(PairKind.None, false, isUneven: true);
        course.Take(PairKind.None, false, isUneven: false);
        course.Take(PairKind.None, false, isUneven: true);
        Assert.False(course.IsUnevenKnown);
        course.Take(PairKind.None, false, isUneven: true);
        Assert.True(course.IsUnevenKnown);
        course.Restart();
        Assert.False(course.IsUnevenKnown);
    }

    private static PairCourse After(PairKind kind, int windows)
    {
        var course = new PairCourse();
        for (var k = 0; k < windows; k++)
        {
            course.Take(kind, false, isUneven: false);
        }

        return course;
    }
}
