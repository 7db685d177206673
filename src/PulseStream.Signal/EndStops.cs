using System.Runtime.Intrinsics;
using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>Counts the samples of both lights that stand at an end stop. Nearly every sample lies within what has been seen: that is asked of both at once.</summary>
/// <param name="fullScaleCounts">The converter's largest count where told, else NaN.</param>
/// <param name="rateHz">Sample rate.</param>
/// <param name="hasRed">Whether the recording has two lights.</param>
internal sealed class EndStops(double fullScaleCounts, double rateHz, bool hasRed)
{
    private readonly EndStop infrared = new(fullScaleCounts, rateHz);
    private readonly EndStop red = new(fullScaleCounts, rateHz);
    private Vector128<double> top = Vector128.Create(double.NegativeInfinity);
    private Vector128<double> bottom = Vector128.Create(double.PositiveInfinity);
    private Vector128<double> previous = Vector128.Create(double.NaN);

    /// <summary>Samples at an end stop since the last <see cref="Restart"/>, of the light that has more.</summary>
    public int Count => Math.Max(infrared.Count, red.Count);

    /// <summary>Judges samples.</summary>
    /// <param name="received">As received: afterwards it no longer shows.</param>
    public void Step(ReadOnlySpan<Sample> received)
    {
        // What hardly ever changes stays in registers.
        var (highest, lowest, before) = (top, bottom, previous);
        foreach (ref readonly var sample in received)
        {
            var counts = Vector128.Create(sample.Infrared, hasRed ? sample.Red : sample.Infrared);
            var isInner = Vector128.LessThan(counts, highest) & Vector128.GreaterThan(counts, lowest);
            if (isInner.ExtractMostSignificantBits() != 0b11)
            {
                StepAtEdge(counts, before);
                (highest, lowest) = (top, bottom);
            }

            before = counts;
        }

        previous = before;
    }

    /// <summary>Starts a new count; the edges are remembered.</summary>
    public void Restart()
    {
        infrared.Restart();
        red.Restart();
    }

    private void StepAtEdge(Vector128<double> counts, Vector128<double> before)
    {
        infrared.Step(counts[0], before[0]);
        red.Step(counts[1], before[1]);
        top = Vector128.Create(infrared.InnerTop, red.InnerTop);
        bottom = Vector128.Create(infrared.InnerBottom, red.InnerBottom);
    }
}
