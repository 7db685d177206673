namespace PulseStream.Sweeps;

/// <summary>What came of the recordings of one cell, or of all.</summary>
/// <param name="Point">The cell; all coordinates NaN for a total.</param>
/// <param name="Runs">Recordings.</param>
/// <param name="Seconds">Seconds with a known truth.</param>
/// <param name="Arms">A_rms of the used seconds; null where none is.</param>
/// <param name="Bias">Their mean error; null likewise.</param>
/// <param name="Used">Share of the seconds that were used, 0 to 1.</param>
/// <param name="Readings">Readings accepted.</param>
/// <param name="Wrong">Of these, wrong ones.</param>
/// <param name="First">Median of the times to the first reading, over the recordings that had one; null where none had.</param>
/// <param name="WithReading">Recordings that had a reading.</param>
/// <param name="ReadingArms">A_rms of the readings; null where there is none.</param>
/// <param name="ReadingBias">Their mean error; null likewise.</param>
/// <param name="PulseArms">A_rms of the pulse rate; null where none was shown.</param>
public sealed record CellSummary(
    SweepPoint Point,
    int Runs,
    int Seconds,
    double? Arms,
    double? Bias,
    double Used,
    int Readings,
    int Wrong,
    double? First,
    int WithReading,
    double? ReadingArms,
    double? ReadingBias,
    double? PulseArms)
{
    private static readonly SweepPoint Everywhere = new(double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);

    /// <summary>The cells of a sweep, in the order in which they come first.</summary>
    /// <param name="runs">All recordings.</param>
    public static IReadOnlyList<CellSummary> Of(IEnumerable<SweepRun> runs) => [.. runs.GroupBy(run => run.Point).Select(cell => Of(cell.Key, [.. cell]))];

    /// <summary>All recordings together.</summary>
    /// <param name="runs">All recordings.</param>
    public static CellSummary Total(IEnumerable<SweepRun> runs) => Of(Everywhere, [.. runs]);

    private static CellSummary Of(SweepPoint point, SweepRun[] runs)
    {
        var (seconds, used) = (runs.Sum(run => run.Seconds), runs.Sum(run => run.Used));
        var readings = runs.Sum(run => run.Readings);
        double[] first = [.. runs.Select(run => run.FirstSeconds).OfType<double>().Order()];
        return new(
            point,
            runs.Length,
            seconds,
            Root(runs.Sum(run => run.SquareSum), used),
            Mean(runs.Sum(run => run.ErrorSum), used),
            seconds == 0 ? 0 : (double)used / seconds,
            readings,
            runs.Sum(run => run.Wrong),
            first.Length == 0 ? null : (first[(first.Length - 1) / 2] + first[first.Length / 2]) / 2,
            first.Length,
            Root(runs.Sum(run => run.ReadingSquareSum), readings),
            Mean(runs.Sum(run => run.ReadingErrorSum), readings),
            Root(runs.Sum(run => run.PulseSquareSum), runs.Sum(run => run.PulseUsed)));
    }

    private static double? Root(double squares, int count) => count == 0 ? null : Math.Sqrt(squares / count);

    private static double? Mean(double sum, int count) => count == 0 ? null : sum / count;
}
