using PulseStream.Samples;
using PulseStream.Sources.Live;
using Xunit;

namespace PulseStream.Tests.Sources.Live;

public sealed class ClockDriftTests
{
    [Theory]
    [InlineData(50.4, "50.40")]
    [InlineData(49.7, "49.70")]
    public void AClockThatIsOffByMoreThanHalfAPercentIsSaid(double hz, string told) => Assert.Equal(
        $"/dev/ttyUSB0: {told} samples a second arrive by this computer's clock, the layout says 50; the session keeps the layout's rate.",
        Words(hz));

    [Theory]
    [InlineData(50.2)]
    [InlineData(49.8)]
    [InlineData(null)]
    public void OneThatIsNearEnoughOrNotKnownYetIsNot(double? hz) => Assert.Null(Words(hz));

    private static string? Words(double? hz) =>
        ClockDrift.Words("/dev/ttyUSB0", new SampleRate(50), SampleTally.Empty with { ArrivalRateHz = hz });
}
