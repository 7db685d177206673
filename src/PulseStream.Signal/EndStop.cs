using System.Runtime.CompilerServices;

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
    private double previous = double.NaN;
    private double innerTop = double.NegativeInfinity;
    private double innerBottom = double.PositiveInfinity;
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

    /// <summary>Judges one sample; NaN is none.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Step(double counts)
    {
        // Nearly every sample lies within what has been seen and is not the one before.
        if (counts < innerTop && counts > innerBottom && counts != previous)
        {
            previous = counts;
            run = 1;
            return;
        }

        StepAtEdge(counts);
    }

    /// <summary>Starts a new count; the edges are remembered.</summary>
    public void Restart() => Count = 0;

    private void StepAtEdge(double counts)
    {
        if (double.IsNaN(counts))
        {
            return;
        }

        run = counts == previous ? run + 1 : 1;
        previous = counts;
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

        innerTop = double.IsNaN(fullScale) ? highest : Math.Min(highest, fullScale);
        innerBottom = Math.Max(lowest, 0);
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
