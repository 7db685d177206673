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

    // Movement and lines hide every second beat, or show a second wave as one.
    [Theory]
    [InlineData(30, 54, false)]
    [InlineData(30, 216, false)]
    [InlineData(30, 100, true)]
    [InlineData(30, 150, true)]
    [InlineData(90, 54, true)]
    public void HalfOrTwiceTheRateAtRestIsAnotherCountBesideMovement(int index, double perMinute, bool continues)
    {
        var course = new RateCourse(new JudgeOptions());
        Assert.True(course.Continues(Second(11, 108)));
        Assert.Equal(continues, course.Continues(Second(index, perMinute, new() { IsSeparated = true })));
        Assert.Equal(continues, course.Continues(Second(index, perMinute, new() { Lines = 1 })));
        Assert.Equal(continues, course.Continues(Second(index, perMinute, new() { Disagreement = 0.02 })));
        Assert.True(course.Continues(Second(index + 9, perMinute)));
    }

    [Fact]
    public void OnlyARateAtRestIsHeldAgainstLaterOnes()
    {
        var course = new RateCourse(new JudgeOptions());
        Assert.True(course.Continues(Second(11, 108, new() { Lines = 1 })));
        Assert.True(course.Continues(Second(30, 54, new() { Lines = 1 })));
    }

    [Fact]
    public void ANewFingerHasARateOfItsOwn()
    {
        var course = new RateCourse(new JudgeOptions());
        Assert.True(course.Continues(Second(11, 108)));
        course.Forget();
        Assert.False(course.IsAsAtRest(Second(30, 108)));
        Assert.True(course.Continues(Second(30, 54, new() { Lines = 1 })));
    }

    private static SignalSecond Second(long index, double perMinute, RatioFit fit = default) =>
        new() { SecondIndex = index, Fit = fit, Pulse = new() { RatePerMinute = perMinute } };
}
