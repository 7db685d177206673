namespace PulseStream.Signal;

/// <summary>
/// Counts the samples of one channel that stand at an end stop of the converter: a converter that cannot go further
/// repeats one and the same count at the edge of all that it has given, which light with its noise does not do.
/// </summary>
internal sealed class EndStop
{
    private readonly double fullScale;
    private readonly int longRun;
    private readonly int wholeSecond;
    private double highest = double.NegativeInfinity;
    private double lowest = double.PositiveInfinity;
    private int run;
    private int highestRuns;
    private int lowestRuns;

    /// <param name="fullScaleCounts">The converter's largest count where told, else NaN.</param>
    /// <param name="rateHz">Sample rate.</param>
    public EndStop(double fullScaleCounts, double rateHz)
    {
        // A beat's rounded top stays within one count for a few hundredths of a second at most.
        const double longRunSeconds = 0.12;
        fullScale = fullScaleCounts;
        wholeSecond = (int)rateHz;
        longRun = Math.Max(5, (int)(longRunSeconds * rateHz));
    }

    /// <summary>Samples at an end stop since the last <see cref="Restart"/>.</summary>
    public int Count { get; private set; }

    /// <summary>Above this a sample has to be judged.</summary>
    public double InnerTop { get; private set; } = double.NegativeInfinity;

    /// <summary>Below this a sample has to be judged.</summary>
    public double InnerBottom { get; private set; } = double.PositiveInfinity;

    /// <summary>Starts a new count; the edges are remembered.</summary>
    public void Restart() => Count = 0;

    /// <summary>Judges a sample that is not within what has been seen, in this light or in the other.</summary>
    /// <remarks>What repeats at an edge was at the edge from the first: a run within what has been seen need not be counted.</remarks>
    /// <param name="counts">The sample.</param>
    /// <param name="previous">The one before; NaN is none.</param>
    public void Step(double counts, double previous)
    {
        run = counts != previous ? 1 : run + 1;
        CountRuns(counts);
        if (counts >= fullScale || counts <= 0)
        {
            Count++;
        }
        else if (double.IsNaN(fullScale) && (counts == highest || counts == lowest))
        {
            Count += AtEdge(counts);
        }
    }

    private void CountRuns(double counts)
    {
        if (counts > highest)
        {
            highest = counts;
            highestRuns = 0;
        }

        if (counts < lowest)
        {
            lowest = counts;
            lowestRuns = 0;
        }

        InnerTop = double.IsNaN(fullScale) ? highest : Math.Min(highest, fullScale);
        InnerBottom = Math.Max(lowest, 0);
        if (run == longRun)
        {
            highestRuns += counts == highest ? 1 : 0;
            lowestRuns += counts == lowest ? 1 : 0;
        }
    }

    // The edge counts when it is met again: a slow drift meets a new one all the time, an end stop always the same.
    private int AtEdge(double counts)
    {
        var isMetAgain = counts == highest ? highestRuns > 1 : lowestRuns > 1;
        var enough = counts == highest && IsPowerOfTwoLess(counts) ? 2 : isMetAgain ? longRun : wholeSecond;
        return run == enough ? enough : run > enough ? 1 : 0;
    }

    private static bool IsPowerOfTwoLess(double counts)
    {
        var next = counts + 1;
        return next >= 256 && next <= 1L << 32 && double.IsInteger(next) && long.IsPow2((long)next);
    }
}
