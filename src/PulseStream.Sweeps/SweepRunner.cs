using PulseStream.Readings;
using PulseStream.Simulation;
using PulseStream.Simulation.Episodes;
using PulseStream.Simulation.Tracks;

namespace PulseStream.Sweeps;

/// <summary>Simulates a grid and runs it through the pipeline on as many cores as told; the outcome does not depend on them.</summary>
/// <param name="grid">What to simulate.</param>
/// <param name="curve">The curve from ratio to saturation; the simulation follows the textbook line.</param>
/// <param name="wrongPoints">A reading farther off than this is wrong.</param>
public sealed class SweepRunner(SweepGrid grid, CalibrationCurve curve, double wrongPoints)
{
    private const int SamplesPerBlock = 1000;

    // Odd and without a pattern, so that neighbouring seeds share nothing (D. Lemire's choice of the golden ratio).
    private const ulong SeedStep = 0x9E3779B97F4A7C15;

    /// <summary>Runs the grid.</summary>
    /// <param name="cores">How many recordings at a time.</param>
    /// <param name="done">Hears after each recording how many are done, from any thread.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <returns>Every recording, cell by cell.</returns>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public IReadOnlyList<SweepRun> Run(int cores, Action<int> done, CancellationToken cancel)
    {
        var points = grid.Points();
        var runs = new SweepRun[points.Count * grid.RunsPerCell];
        var count = 0;
        Parallel.For(0, runs.Length, new ParallelOptions { MaxDegreeOfParallelism = cores, CancellationToken = cancel }, i =>
        {
            runs[i] = RunOne(points[i / grid.RunsPerCell], i % grid.RunsPerCell, unchecked(grid.Seed + ((ulong)(i + 1) * SeedStep)));
            done(Interlocked.Increment(ref count));
        });
        return runs;
    }

    /// <summary>What a cell's recording is made of.</summary>
    /// <param name="point">The cell.</param>
    /// <param name="seed">Its chance.</param>
    public Scenario ScenarioOf(SweepPoint point, ulong seed) => new()
    {
        DurationSeconds = grid.Seconds,
        RateHz = point.Rate,
        Seed = seed,
        Spo2 = Track.Constant(point.Spo2),
        Pulse = Track.Constant(point.Pulse),
        Perfusion = Track.Constant(point.Perfusion),
        Noise = point.Noise,
        Episodes = point.Motion > 0 ? [new MotionEpisode(0, grid.Seconds, Size: point.Motion)] : [],
    };

    private SweepRun RunOne(SweepPoint point, int number, ulong seed)
    {
        var recording = new SimulatedRecording(ScenarioOf(point, seed));
        var tally = new RunTally(_ => (point.Spo2, point.Pulse), wrongPoints);
        var reader = new FingerReader(recording.Header, curve, new ReadingOptions());
        foreach (var block in recording.Blocks(SamplesPerBlock))
        {
            reader.Read(block, tally);
        }

        reader.Finish(tally);
        return tally.ToRun(point, number);
    }
}
