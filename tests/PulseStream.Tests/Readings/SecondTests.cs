using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A second is usable or refused, and never passes for the other.</summary>
public sealed class SecondTests
{
    private static readonly UsableSecond Calm = new(7, new(97, 96, 98), 70, 2, Reasons.LowPerfusion);
    private static readonly UnusableSecond Moved = new(7, Reasons.Motion | Reasons.Settling, 3);

    [Fact]
    public void AUsableSecondSaysAllOfIt()
    {
        Second second = Calm;
        Assert.True(second.IsUsable);
        Assert.Equal(Calm, second.Usable);
        Assert.Null(second.Unusable);
        Assert.Equal((7, 2), (second.SecondIndex, second.PerfusionPercent!.Value));
    }

    [Fact]
    public void ARefusedSecondSaysWhyAndHasNothingToShow()
    {
        Second second = Moved;
        Assert.False(second.IsUsable);
        Assert.Null(second.Usable);
        Assert.Equal(Moved, second.Unusable);
        Assert.Equal((7, 3), (second.SecondIndex, second.PerfusionPercent!.Value));
    }

    [Fact]
    public void ASecondThatNobodyHasJudgedIsNotUsable()
    {
        Assert.Null(default(Second).Usable);
        Assert.NotNull(default(Second).Unusable);
    }

    [Fact]
    public void WarningsAndReasonsAreNotTakenForEachOther() =>
        Assert.NotEqual<Second>(new UsableSecond(7, null, null, 3, Moved.Reasons), Moved);
}
