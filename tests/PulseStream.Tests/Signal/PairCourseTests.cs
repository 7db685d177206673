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
        course.Take(PairKind.EarlyBeat, false);
        Assert.Equal("Either", course.Settle(PairKind.EarlyBeat).ToString());
    }

    // One window may take a second wave for a beat, two that share their beats hardly by chance; eight seconds later none of them is left.
    [Theory]
    [InlineData(1, 0, false)]
    [InlineData(2, 0, true)]
    [InlineData(2, 8, false)]
    public void SecondWavesThatWereAsLikelyBeatsStayInDoubt(int likely, int since, bool were)
    {
        var course = After(PairKind.SecondWave, 8);
        for (var k = 0; k < likely + since; k++)
        {
            course.Take(PairKind.SecondWave, false, isAsLikelyBeats: k < likely);
        }

        Assert.Equal(were, course.WereAsLikelyBeats);
    }

    [Fact]
    public void AWindowWithoutPairsHasNone() => Assert.Equal("None", After(PairKind.SecondWave, 8).Settle(PairKind.None).ToString());

    [Fact]
    public void AnotherRhythmIsBelievedOnceTheWindowsShareNoBeatWithTheOld()
    {
        var course = After(PairKind.SecondWave, 8);
        for (var k = 0; k < 8; k++)
        {
            course.Take(PairKind.EarlyBeat, false);
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
            course.Take(PairKind.EarlyBeat, false);
        }

        for (var k = 0; k < 8; k++)
        {
            course.Take(PairKind.SecondWave, false);
        }

        Assert.Equal("SecondWave", course.Settle(PairKind.SecondWave).ToString());
        Assert.True(course.IsDoubtful);
        for (var k = 0; k < 8; k++)
        {
            course.Take(PairKind.SecondWave, false);
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
            course.Take(PairKind.None, false);
        }

        Assert.False(course.WasUnsure);
    }

    [Fact]
    public void EvenSecondWavesAreKnownOnceSeenTwice()
    {
        var course = new PairCourse();
        course.Take(PairKind.SecondWave, true);
        Assert.False(course.IsEvenKnown);
        course.Take(PairKind.SecondWave, true);
        Assert.True(course.IsEvenKnown);
        course.Restart();
        Assert.False(course.IsEvenKnown);
    }

    [Fact]
    public void SecondWavesWithoutARhythmAreKnownOnceSeenThreeTimes()
    {
        var course = new PairCourse();
        course.Take(PairKind.None, false, isUneven: true);
        course.Take(PairKind.None, false);
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
            course.Take(kind, false);
        }

        return course;
    }
}
