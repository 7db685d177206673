using CsCheck;
using PulseStream.Comparison;
using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Comparison;

public sealed class RunComparisonTests
{
    private static readonly ComparisonOptions Usual = new();

    [Fact]
    public void TheSameResultsAreTheSame()
    {
        var row = One(Runs.Of("hut.csv", (12, 96)).Advised(60, AdviceLevel.Usual), Runs.Of("hut.csv", (12, 96)).Advised(60, AdviceLevel.Usual));

        Assert.Equal((Verdict.Same, 0, 0, 0), (row.Verdict, row.OnlyA, row.OnlyB, row.LargestMove));
        Assert.Equal((0.75, 0.75, AdviceLevel.Usual, AdviceLevel.Usual), (row.UsedA, row.UsedB, row.AdviceA, row.AdviceB));
        Assert.Null(row.Problem);
    }

    [Theory]
    [InlineData(AdviceLevel.Emergency, AdviceLevel.Usual, Verdict.Lost)]
    [InlineData(AdviceLevel.Emergency, AdviceLevel.Call, Verdict.Lost)]
    [InlineData(AdviceLevel.Recheck, AdviceLevel.Usual, Verdict.Lost)]
    [InlineData(AdviceLevel.Usual, AdviceLevel.Recheck, Verdict.Gained)]
    [InlineData(AdviceLevel.Call, AdviceLevel.DoctorNow, Verdict.Gained)]
    [InlineData(AdviceLevel.Call, AdviceLevel.Call, Verdict.Same)]
    public void AdviceThatFallsIsLostAndOneThatRisesIsGained(AdviceLevel a, AdviceLevel b, Verdict verdict) =>
        Assert.Equal(verdict, One(Runs.Of("hut.csv").Advised(60, a), Runs.Of("hut.csv").Advised(60, b)).Verdict);

    [Fact]
    public void AnAlarmOfAnotherSittingDoesNotMakeUpForOneThatIsLost()
    {
        FingerSpan[] sittings = [new(0, 60), new(100, 160)];
        var a = Runs.Of("hut.csv").Advised(60, AdviceLevel.Emergency).Advised(160, AdviceLevel.Usual) with { Sittings = sittings };
        var b = Runs.Of("hut.csv").Advised(60, AdviceLevel.Usual).Advised(160, AdviceLevel.Emergency) with { Sittings = sittings };

        Assert.Equal(Verdict.Lost, One(a, b).Verdict);
    }

    [Fact]
    public void TheLeastLevelOfAnAlarmCanBeChosen()
    {
        var options = new ComparisonOptions { AlarmFrom = AdviceLevel.Call };

        Assert.Equal(Verdict.Same, RecordingComparison.Of(Runs.Of("a").Advised(9, AdviceLevel.Recheck), Runs.Of("a").Advised(9, AdviceLevel.Usual), options).Verdict);
    }

    [Fact]
    public void AReadingIsTheSameAFewSecondsLaterAndAnotherOneAfterwards()
    {
        var row = One(Runs.Of("hut.csv", (12, 96), (40, 95)), Runs.Of("hut.csv", (14, 94), (46, 95)));

        Assert.Equal((Verdict.Moved, 1, 1, 2), (row.Verdict, row.OnlyA, row.OnlyB, row.LargestMove));
        Assert.Equal((12, 96, 94), (row.MovedFrom!.Value.Second, row.MovedFrom.Value.Spo2Percent, row.MovedTo!.Value.Spo2Percent));
    }

    [Fact]
    public void RowsComeWorstFirst()
    {
        RecordingResults[] a =
        [
            Runs.Of("same.csv", (12, 96)), Runs.Of("moved.csv", (12, 96)), Runs.Of("gained.csv").Advised(60, AdviceLevel.Usual),
            Runs.Of("lost.csv").Advised(60, AdviceLevel.Call), Runs.Of("lost-most.csv").Advised(60, AdviceLevel.Emergency),
        ];
        RecordingResults[] b =
        [
            Runs.Of("lost-most.csv").Advised(60, AdviceLevel.Usual), Runs.Of("lost.csv").Advised(60, AdviceLevel.Recheck),
            Runs.Of("gained.csv").Advised(60, AdviceLevel.Call), Runs.Of("moved.csv", (12, 97)), Runs.Of("same.csv", (12, 96)),
        ];

        var comparison = Compared(a, b);

        Assert.Equal(["lost-most.csv", "lost.csv", "gained.csv", "moved.csv", "same.csv"], comparison.Recordings.Select(row => row.Recording), StringComparer.Ordinal);
        Assert.Equal((2, 1, 1, 1), (comparison.Count(Verdict.Lost), comparison.Count(Verdict.Gained), comparison.Count(Verdict.Moved), comparison.Count(Verdict.Same)));
    }

    [Fact]
    public void RecordingsAreMatchedByNameWhateverTheFolderAndTheFormat()
    {
        var row = Assert.Single(Compared([Runs.Of("/old/night.csv", (12, 96))], [Runs.Of(@"C:\new\night.edf", (12, 96))]).Recordings);

        Assert.Equal(("night.csv", Verdict.Same), (row.Recording, row.Verdict));
    }

    [Fact]
    public void NightsOfOneFileNameAreMatchedByTheirSession()
    {
        RecordingResults Night(int day, int spo2) => Runs.Of("port", (12, spo2)) with { Session = $"person=hut-07/date=2026-03-0{day}/session=port" };

        var comparison = Compared([Night(1, 96), Night(2, 91)], [Night(2, 91), Night(3, 88), Night(1, 96)]);

        Assert.Equal(2, comparison.Count(Verdict.Same));
        Assert.Equal("A has no such recording.", Assert.Single(comparison.Recordings, row => row.Verdict == Verdict.Moved).Problem);
    }

    [Fact]
    public void AnAlarmOfARecordingThatTheOtherRunLacksIsLost()
    {
        var comparison = Compared([Runs.Of("hut.csv", (9, 84)).Advised(60, AdviceLevel.Emergency)], []);

        var row = Assert.Single(comparison.Recordings);
        Assert.Equal((Verdict.Lost, 1, (int?)null, (double?)null), (row.Verdict, row.OnlyA, row.LargestMove, row.UsedB));
        Assert.False(row.IsUnreadable);
    }

    [Fact]
    public void SwappingTheRunsSwapsTheVerdicts() => Gen.Select(Results, Results).Sample((a, b) =>
    {
        var (there, back) = (One(a, b), One(b, a));
        return (there.OnlyA, there.OnlyB, there.LargestMove) == (back.OnlyB, back.OnlyA, back.LargestMove)
            && (there.Verdict == Verdict.Same) == (back.Verdict == Verdict.Same)
            && (there.Verdict != Verdict.Gained || back.Verdict == Verdict.Lost)
            && One(a, a).Verdict == Verdict.Same;
    });

    private static readonly Gen<RecordingResults> Results =
        from readings in Gen.Select(Gen.Long[0, 50], Gen.Int[80, 99]).Array[0, 6]
        from level in Gen.Int[0, 4]
        select Runs.Of("hut.csv", [.. readings.DistinctBy(reading => reading.Item1).OrderBy(reading => reading.Item1)]).Advised(60, (AdviceLevel)level);

    [Fact]
    public void ResultsAreReadOnceAndRecordingByRecording()
    {
        var (open, most, read) = (0, 0, new List<string>());
        ListedRecording Listed(string session, string run) => new ReadLater(session, () =>
        {
            read.Add(run + session);
            most = Math.Max(most, ++open);
            return Runs.Of("port", (12, 96), (40, 95)) with { Session = session };
        });

        var comparison = RunComparison.Of(Pairing.Of([Listed("1", "a"), Listed("2", "a"), Listed("3", "a")], [Listed("3", "b"), Listed("2", "b")]).Select(pair =>
        {
            var row = RecordingComparison.Of(pair.A?.Read(), pair.B?.Read(), Usual);
            open = 0;
            return row;
        }));

        Assert.Equal((2, 5), (most, read.Distinct(StringComparer.Ordinal).Count()));
        Assert.All(comparison.Recordings, row => Assert.Empty(row.Both));
        Assert.Equal((4, 2), (comparison.Both.Values.Sum(), comparison.Both[(96, 96)]));
        Assert.Equal(["1", "2", "3"], comparison.Recordings.Select(row => row.Recording).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    private static RunComparison Compared(IReadOnlyList<RecordingResults> a, IReadOnlyList<RecordingResults> b) =>
        RunComparison.Of(Pairing.Of([.. a.Select(results => new ListedResults(results))], [.. b.Select(results => new ListedResults(results))]).Select(pair => RecordingComparison.Of(pair.A?.Read(), pair.B?.Read(), Usual)));

    private sealed class ReadLater(string session, Func<RecordingResults> read) : ListedRecording
    {
        public override string Session => session;

        public override string Source => "port";

        public override RecordingResults Read() => read();
    }

    private static RecordingComparison One(RecordingResults a, RecordingResults b) => RecordingComparison.Of(a, b, Usual);
}
