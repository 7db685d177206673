using System.Diagnostics;
using System.Reactive.Linq;
using PulseStream.Page;
using PulseStream.Samples;
using PulseStream.Simulation;
using PulseStream.Tests.Sessions;
using Xunit;

namespace PulseStream.Tests.Page;

public sealed class PacedRecordingTests
{
    private const double LeastUpdatesPerSecond = 25;

    [Fact]
    public void PiecesAreShortEnoughAndNoSampleIsLost()
    {
        var scenario = new Scenario { DurationSeconds = 2 };
        using var plain = new ScriptedRecording(scenario);
        using var paced = new PacedRecording(new ScriptedRecording(scenario), speed: 50, TimeProvider.System);

        var pieces = paced.Blocks(CancellationToken.None).ToEnumerable().ToList();

        Assert.Equal(Samples(plain.Blocks(CancellationToken.None).ToEnumerable()), Samples(pieces));
        Assert.All(pieces, piece => Assert.True(piece.Samples.Length <= 50 * paced.Header.Rate.Hz / LeastUpdatesPerSecond));
    }

    [Fact]
    public void ItTakesTheTimeThatTheSpeedAsksFor()
    {
        using var paced = new PacedRecording(new ScriptedRecording(new Scenario { DurationSeconds = 4 }), speed: 8, TimeProvider.System);

        var began = Stopwatch.GetTimestamp();
        paced.Blocks(CancellationToken.None).Subscribe(_ => { });

        // A timer may ring a little early: the wait is for its clock, not for this one.
        Assert.True(Stopwatch.GetElapsedTime(began) >= TimeSpan.FromSeconds(0.49));
    }

    [Fact]
    public void OnceCancelledItEndsWithoutWaitingAndWithEverythingCounted()
    {
        using var cancel = new CancellationTokenSource();
        using var paced = new PacedRecording(new ScriptedRecording(new Scenario { DurationSeconds = 3600 }), speed: 1, TimeProvider.System);
        var count = 0L;

        paced.Blocks(cancel.Token).Subscribe(piece =>
        {
            count += piece.Samples.Length;
            cancel.Cancel();
        });

        Assert.Equal(paced.Tally.Samples, count);
        Assert.InRange(count, 1, 100);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void ASpeedIsAboveZero(double speed)
    {
        using var recording = new ScriptedRecording(new Scenario { DurationSeconds = 1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new PacedRecording(recording, speed, TimeProvider.System));
    }

    private static List<(long Index, Sample Sample)> Samples(IEnumerable<SampleBlock> blocks) =>
        [.. blocks.SelectMany(block => block.Samples.ToArray().Select((sample, i) => (block.FirstIndex + i, sample)))];
}
