using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>What the mean rate of eight seconds can be a second later.</summary>
public sealed class RateCourseTests
{
    [Fact]
    public void ARateThatDoublesAtOnceIsAnotherCount()
    {
        var course = new RateCourse(new JudgeOptions());
        Assert.True(course.Continues(Second(11, 54)));
        Assert.False(course.Continues(Second(12, 108)));
        Assert.False(course.Continues(Second(13, 108)));
        Assert.True(course.Continues(Second(14, 54)));
    }

    [Fact]
    public void APulseThatLeapsIsFollowed()
    {
        var course = new RateCourse(new JudgeOptions());
        Assert.All(Enumerable.Range(0, 9), k => Assert.True(course.Continues(Second(20 + k, 60 + (70 * k / 8.0)))));
    }

    [Fact]
    public void AnOlderRateSharesNoBeat()
    {
        var course = new RateCourse(new JudgeOptions());
        Assert.True(course.Continues(Second(3, 54)));
        Assert.True(course.Continues(Second(11, 160)));
    }

    private static SignalSecond Second(long index, double perMinute) =>
        new() { SecondIndex = index, Pulse = new() { RatePerMinute = perMinute } };
}
