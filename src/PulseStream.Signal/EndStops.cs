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
    private Vector128<double> previous = Vector128.Create(double.NaN);

    /// <summary>Samples at an end stop since the last <see cref="Restart"/>, of the light that has more.</summary>
    public int Count => Math.Max(infrared.Count, red.Count);

    /// <summary>What lies below this and above <see cref="Bottom"/> in both lights need not be judged.</summary>
    public Vector128<double> Top { get; private set; } = Vector128.Create(double.NegativeInfinity);

    /// <summary>The lower bound of the same.</summary>
    public Vector128<double> Bottom { get; private set; } = Vector128.Create(double.PositiveInfinity);

    /// <summary>Both lights as they are judged, where there is one that one twice.</summary>
    /// <param name="sample">As received: afterwards an end stop no longer shows.</param>
    public Vector128<double> CountsOf(in Sample sample) => Vector128.Create(sample.Infrared, hasRed ? sample.Red : sample.Infrared);

    /// <summary>Passes over samples that need not be judged.</summary>
    /// <param name="last">The last of them.</param>
    public void Pass(in Sample last) => previous = CountsOf(last);

    /// <summary>Judges samples.</summary>
    /// <param name="received">As received.</param>
    public void Step(ReadOnlySpan<Sample> received)
    {
        foreach (ref readonly var sample in received)
        {
            var counts = CountsOf(sample);
            var isInner = Vector128.LessThan(counts, Top) & Vector128.GreaterThan(counts, Bottom);
            if (isInner.ExtractMostSignificantBits() != 0b11)
            {
                StepAtEdge(counts, previous);
            }

            previous = counts;
        }
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
        Top = Vector128.Create(infrared.InnerTop, red.InnerTop);
        Bottom = Vector128.Create(infrared.InnerBottom, red.InnerBottom);
    }
}
