namespace PulseStream.Sources.Edf;

/// <summary>How many samples make a data record, so that its length is a number that EDF's eight letters hold.</summary>
/// <param name="SamplesPerRecord">Of each signal.</param>
/// <param name="Seconds">Length of a record.</param>
internal sealed record EdfGrid(int SamplesPerRecord, string Seconds)
{
    // Records of a few seconds: short enough to lie close to a gap, long enough to carry their annotations.
    private const int LongestSeconds = 10;
    private const int MostSamples = 10_000;
    private const double WholeSlack = 1e-9;

    /// <summary>The shortest whole number of seconds that holds a whole number of samples; else the closest eight letters.</summary>
    public static EdfGrid Of(double rateHz)
    {
        for (var seconds = 1; seconds <= LongestSeconds; seconds++)
        {
            var samples = Math.Round(rateHz * seconds);
            if (Math.Abs(samples - (rateHz * seconds)) <= WholeSlack * samples)
            {
                return new EdfGrid((int)samples, EdfNumber.Of(seconds));
            }
        }

        var first = (int)Math.Ceiling(rateHz);
        return Enumerable.Range(first, Math.Max(1, MostSamples - first))
            .Select(samples => new EdfGrid(samples, EdfNumber.Of(samples / rateHz)))
            .MinBy(grid => Math.Abs((grid.SamplesPerRecord / EdfNumber.Parse(grid.Seconds)) - rateHz))!;
    }
}
