using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What keeps its time behind each front while the intervals change is the second wave of that beat.</summary>
public sealed class DelayCourseTests
{
    // A second wave 0.35 s behind the front of a beat of 66 a minute, a fifth as steep, narrow on the flank; breathing moves the interval by 4 % (common practice).
    private static readonly RisePairs Dicrotic = new RisePairs(0.91, 0.35, 0.2, 0.28, 0.097, 0.067, 0.04, 150) with { DelaySpreadSeconds = 0.006, IntervalSpreadSeconds = 0.036 };

    [Fact]
    public void WhatKeepsItsTimeIsASecondWave() => Assert.True(After(12, Dicrotic).KeepTime(Dicrotic));

    // A coupled beat that is early by a share of the interval moves with it: at 0.38 of a pair by 0.38 of what moves the pair.
    [Fact]
    public void WhatMovesWithTheIntervalIsNot()
    {
        var share = Dicrotic with { DelaySpreadSeconds = 0.38 * 0.036 };
        Assert.False(After(12, share).KeepTime(share));
    }

    // Early beats of a ventricle follow after nearly the same time as well, within one to three hundredths of a second ("fixed coupling",
    // common practice), however far breathing moves the intervals.
    [Fact]
    public void WhatKeepsItsTimeAsACoupledBeatDoesIsNotEither()
    {
        var coupled = Dicrotic with { DelaySpreadSeconds = 0.012, IntervalSpreadSeconds = 0.08 };
        Assert.False(After(12, coupled).KeepTime(coupled));
    }

    // Intervals that are all the same say nothing.
    [Fact]
    public void WhereIntervalsDoNotChangeNobodyKnows()
    {
        var steady = Dicrotic with { DelaySpreadSeconds = 0.001, IntervalSpreadSeconds = 0.012 };
        Assert.False(After(12, steady).KeepTime(steady));
    }

    // One window in a few of bigeminy keeps its time by chance.
    [Fact]
    public void AFewWindowsAreNotEnough()
    {
        Assert.False(After(7, Dicrotic).KeepTime(Dicrotic));
        var course = After(12, Dicrotic with { DelaySpreadSeconds = 0.02 });
        course.Take(Dicrotic);
        Assert.False(course.KeepTime(Dicrotic));
    }

    // A heart that falls into bigeminy: the wave that comes now, or the period it comes in, is another one.
    [Theory]
    [InlineData(0.42, 0.91)]
    [InlineData(0.39, 1.3)]
    public void AnotherWaveBeginsAnew(double delay, double period)
    {
        var other = Dicrotic with { DelaySeconds = delay, PeriodSeconds = period };
        var course = After(12, Dicrotic);
        Assert.False(course.KeepTime(other));
        course.Take(other);
        Assert.False(course.KeepTime(other));
    }

    // Second waves reach a third of the front's steepness, seldom more, and come a tenth of a second after the valve has closed at the latest
    // (0.406 s at 62 a minute; Weissler, Circulation 1968;37:149).
    [Theory]
    [InlineData(0.35, 0.45)]
    [InlineData(0.445, 0.2)]
    public void ASteeperOrALaterOneMayBeABeatAllTheSame(double delay, double slope)
    {
        var other = Dicrotic with { PeriodSeconds = 0.96, DelaySeconds = delay, SlopeShare = slope };
        var course = After(12, other);
        Assert.True(course.KeepTime(other with { DelaySeconds = 0.4, SlopeShare = 0.2 }));
        Assert.False(course.KeepTime(other));
    }

    // Early beats of 90 a minute that hardly pulse, out of the crest of the full ones: they come when they will, a second wave does not.
    [Theory]
    [InlineData(0.028, 0.029, 0.25, 0.7, 4, true)]
    [InlineData(0.028, 0.029, 0.25, 0.7, 3, false)]
    [InlineData(0.015, 0.015, 0.25, 0.7, 8, false)]
    [InlineData(0.028, 0.045, 0.25, 0.7, 8, false)]
    [InlineData(0.06, 0.029, 0.25, 0.7, 8, false)]
    [InlineData(0.028, 0.029, 0.1, 0.7, 8, false)]
    [InlineData(0.028, 0.029, 0.25, 0.4, 8, false)]
    public void WhatScattersBehindTheCrestMayBeABeat(double delaySpread, double intervalSpread, double slope, double foot, int windows, bool scatters)
    {
        var pairs = new RisePairs(1.35, 0.48, slope, foot, 0.16, 0.115, 0.1, 30) with { DelaySpreadSeconds = delaySpread, IntervalSpreadSeconds = intervalSpread };
        Assert.Equal(scatters, After(windows, pairs).Scatter(pairs));
    }

    [Fact]
    public void ARestartForgets()
    {
        var course = After(12, Dicrotic);
        course.Restart();
        Assert.False(course.KeepTime(Dicrotic));
    }

    private static DelayCourse After(int windows, in RisePairs pairs)
    {
        DelayCourse course = new();
        for (var k = 0; k < windows; k++)
        {
            course.Take(pairs);
        }

        return course;
    }
}
