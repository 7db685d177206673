namespace PulseStream.Signal;

/// <summary>The mean beat of the calm finger, infrared, in its calm height; it can be laid out along other beats.</summary>
internal sealed class PulseTemplate
{
    // From before the front to past the next one, so that a longer interval is filled too.
    private const double BeforeShare = 0.3;
    private const double LengthShare = 1.5;
    private const int FewestBeats = 2;

    // A pulse that was learned just now is not learned anew: most of its beats would be the same.
    private const int FreshSeconds = 3;

    // Two and a half points: what came with another R is asked anew whether it is a pulse.
    private const double OtherRatio = 0.1;

    private const int MostRises = 64;

    // A cubic needs a point before the first.
    private const int Lead = 1;
    private readonly double[] points;
    private readonly double[] learned;
    private readonly double[] learnedRises = new double[MostRises];
    private readonly SignalOptions options;
    private int before;
    private int length;
    private int learnedBins;
    private int learnedCount;
    private bool isAveraged;

    public PulseTemplate(SignalDesign design)
    {
        options = design.Options;
        points = new double[LongestBeatBins(design)];
        learned = new double[design.LongestWindowBins];
    }

    /// <summary>Whether a calm pulse has been learned.</summary>
    public bool IsKnown => length > 0;

    /// <summary>Whether it is a living finger's for sure.</summary>
    public bool IsProven { get; set; }

    /// <summary>Period of the calm pulse, bins.</summary>
    public double PeriodBins { get; private set; }

    /// <summary>Its root mean square, natural logarithm of light.</summary>
    public double Size { get; private set; }

    /// <summary>Skewness of its slope.</summary>
    public double FrontSteepness { get; private set; }

    /// <summary>Its R.</summary>
    public double Ratio { get; private set; }

    /// <summary>Bins of a beat before its steepest rise.</summary>
    public int BeforeBins => before;

    /// <summary>One beat, a period long.</summary>
    public ReadOnlySpan<double> Beat => Points[..Math.Min(length, (int)PeriodBins)];

    /// <summary>Seconds since it was learned.</summary>
    public int AgeSeconds { get; private set; }

    /// <summary>Spread of the pulse's height now against the one learned, as a share.</summary>
    public double HeightSpread => Math.Sqrt((options.HeightSpread * options.HeightSpread) + (options.HeightSpreadPerRootSecond * options.HeightSpreadPerRootSecond * AgeSeconds));

    /// <summary>Most bins of a beat.</summary>
    /// <param name="design">The design.</param>
    public static int LongestBeatBins(SignalDesign design) => (int)(LengthShare * Repetition.LongestPeriodSeconds * design.BinRateHz) + 1;

    /// <summary>Whether this pulse is known, so that nobody has to ask whether it is one.</summary>
    /// <param name="ratio">R of a window, no unit; NaN where there is one light.</param>
    public bool Knows(double ratio) => IsKnown && IsProven && !(Math.Abs(ratio - Ratio) > OtherRatio);

    /// <summary>Forgets the pulse: another finger may come.</summary>
    public void Forget() => length = 0;

    /// <summary>A second went by.</summary>
    public void Age() => AgeSeconds++;

    /// <summary>Learns the mean beat of a window, unless it holds too few whole ones or one was learned just now.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="rises">Steepest rises, bins.</param>
    /// <param name="periodBins">Typical interval, bins.</param>
    /// <param name="frontSteepness">Skewness of the window's slope.</param>
    /// <param name="ratio">Its R.</param>
    public void Learn(ReadOnlySpan<double> pairs, ReadOnlySpan<double> rises, double periodBins, double frontSteepness, double ratio)
    {
        if (IsKnown && AgeSeconds < FreshSeconds)
        {
            return;
        }

        var newBefore = (int)(BeforeShare * periodBins);
        var newLength = Math.Min(points.Length, (int)(LengthShare * periodBins));
        if (WholeBeats(pairs, rises, newBefore, newLength) < FewestBeats)
        {
            return;
        }

        Ratio = ratio;
        PeriodBins = periodBins;
        Size = LinePart.SizeOf(pairs);
        FrontSteepness = frontSteepness;
        before = newBefore;
        length = newLength;
        AgeSeconds = 0;
        isAveraged = false;
        learnedBins = pairs.Length / 2;
        for (var n = 0; n < learnedBins; n++)
        {
            learned[n] = pairs[2 * n];
        }

        learnedCount = rises.Length;
        rises.CopyTo(learnedRises);
    }

    /// <summary>Lays the beat out along rises, one beat to the front of the next, as the second value of each pair.</summary>
    /// <param name="rises">Steepest rises, bins; at least two.</param>
    /// <param name="pairs">Its second values are overwritten.</param>
    public void LayOut(ReadOnlySpan<double> rises, Span<double> pairs)
    {
        var bins = pairs.Length / 2;
        var beatPoints = Points;
        var beat = -1;
        for (var n = 0; n < bins; n++)
        {
            while (beat + 1 < rises.Length && n >= rises[beat + 1] - before + Lead)
            {
                beat++;
            }

            // Before the first rise lies the tail of a beat that is not seen.
            var start = (beat < 0 ? rises[0] - PeriodBins : rises[beat]) - before;
            pairs[(2 * n) + 1] = Cubic.At(beatPoints, 1, n - start);
        }
    }

    // A pulse is learned every few seconds, and hardly ever asked for before the next one is: its beats are averaged then.
    private ReadOnlySpan<double> Points
    {
        get
        {
            if (!isAveraged)
            {
                Average(learned.AsSpan(0, learnedBins), learnedRises.AsSpan(0, learnedCount));
                isAveraged = true;
            }

            return points.AsSpan(0, length);
        }
    }

    private void Average(ReadOnlySpan<double> infrared, ReadOnlySpan<double> rises)
    {
        points.AsSpan(0, length).Clear();
        var count = 0;
        foreach (var rise in rises)
        {
            if (IsWhole(infrared.Length, rise - before, length))
            {
                count++;
                Add(infrared, rise - before);
            }
        }

        for (var n = 0; n < length; n++)
        {
            points[n] /= count;
        }
    }

    // All points of a beat lie at the same share of the way between two bins.
    private void Add(ReadOnlySpan<double> infrared, double start)
    {
        var first = (int)start;
        var (a, b, c, d) = Cubic.Weights(start - first);
        var light = infrared.Slice(first - 1, length + 3);
        for (var n = 0; n < length; n++)
        {
            points[n] += (a * light[n]) + (b * light[n + 1]) + (c * light[n + 2]) + (d * light[n + 3]);
        }
    }

    private static bool IsWhole(int bins, double start, int points) => start >= 1 && start + points <= bins - 2;

    private static int WholeBeats(ReadOnlySpan<double> pairs, ReadOnlySpan<double> rises, int before, int points)
    {
        var count = 0;
        foreach (var rise in rises)
        {
            count += IsWhole(pairs.Length / 2, rise - before, points) ? 1 : 0;
        }

        return count;
    }
}
