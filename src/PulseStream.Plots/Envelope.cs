namespace PulseStream.Plots;

/// <summary>
/// Lowest and highest value of a signal in bins that double in length whenever they no longer reach: constant memory for
/// any length, single samples while it is short, and no peak is ever lost.
/// </summary>
internal sealed class Envelope
{
    /// <summary>Bins kept: at least two for each pixel of a picture of the default width.</summary>
    public const int BinCount = 4096;

    private readonly double[] lows = new double[BinCount];
    private readonly double[] highs = new double[BinCount];

    /// <summary>An envelope without a value.</summary>
    public Envelope()
    {
        Array.Fill(lows, double.NaN);
        Array.Fill(highs, double.NaN);
    }

    /// <summary>Samples that a bin stands for: a power of two.</summary>
    public long SamplesPerBin { get; private set; } = 1;

    /// <summary>Bins up to the last one with a value.</summary>
    public int Count { get; private set; }

    /// <summary>Lowest value in a bin; NaN where it has none.</summary>
    /// <param name="bin">0 to <see cref="Count"/> − 1.</param>
    public double LowOf(int bin) => lows[bin];

    /// <summary>Highest value in a bin; NaN where it has none.</summary>
    /// <param name="bin">0 to <see cref="Count"/> − 1.</param>
    public double HighOf(int bin) => highs[bin];

    /// <summary>Adds a value.</summary>
    /// <param name="index">Sample index, 0 or more.</param>
    /// <param name="value">Any number.</param>
    public void Add(long index, double value)
    {
        while (index / SamplesPerBin >= BinCount)
        {
            Halve();
        }

        var bin = (int)(index / SamplesPerBin);
        lows[bin] = LesserOf(lows[bin], value);
        highs[bin] = GreaterOf(highs[bin], value);
        Count = Math.Max(Count, bin + 1);
    }

    private void Halve()
    {
        for (var bin = 0; bin < BinCount / 2; bin++)
        {
            lows[bin] = LesserOf(lows[2 * bin], lows[(2 * bin) + 1]);
            highs[bin] = GreaterOf(highs[2 * bin], highs[(2 * bin) + 1]);
        }

        Array.Fill(lows, double.NaN, BinCount / 2, BinCount / 2);
        Array.Fill(highs, double.NaN, BinCount / 2, BinCount / 2);
        SamplesPerBin *= 2;
        Count = (Count + 1) / 2;
    }

    // Unlike Math.Min and Math.Max: NaN stands for no value yet.
    private static double LesserOf(double a, double b) => a <= b || double.IsNaN(b) ? a : b;

    private static double GreaterOf(double a, double b) => a >= b || double.IsNaN(b) ? a : b;
}
