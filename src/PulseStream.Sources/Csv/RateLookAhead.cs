namespace PulseStream.Sources.Csv;

/// <summary>
/// Reads the first seconds of a recording for its rate and goes back to its first row. Two seconds do where they settle
/// the rate to a tenth of a hertz, ten seconds in any case: a live pipe keeps a person waiting no longer than it must.
/// </summary>
internal static class RateLookAhead
{
    private const double ShortestSeconds = 2;
    private const double LongestSeconds = 10;
    private const double SettledHz = 0.1;

    // Looked at whenever the rows have doubled, so that the work stays in proportion to the rows.
    private const int FirstLook = 64;

    /// <param name="lines">Stands at the first row, and does so again afterwards.</param>
    /// <param name="layout">A layout with a column of times.</param>
    /// <param name="cancel">Ends the wait for rows.</param>
    /// <returns>The fit, and how many rows it looked at, good and bad.</returns>
    public static (RateFit? Fit, long Rows) Read(LineReader lines, CsvLayout layout, CancellationToken cancel)
    {
        lines.Hold();
        var (fit, parser, rows, nextLook) = (new RateFit(), new CsvRowParser(layout), 0L, FirstLook);
        var found = false;
        while (!found && lines.TryRead(cancel, out var line) == LineKind.Line)
        {
            // Without a counter a bad row takes its place in the count, as it does when the rows are read.
            rows++;
            if (parser.Parse(line, lines.LineNumber, out var row) != RowFault.None)
            {
                continue;
            }

            fit.Add(layout.HasCounter ? row.Stamp.Counter : rows, row.Stamp.Seconds, parser.TimeResolution(line));
            if (fit.Rows == nextLook)
            {
                nextLook *= 2;
                found = fit.TryFit() && IsEnough(fit);
            }
        }

        cancel.ThrowIfCancellationRequested();
        lines.Rewind();
        return (found || fit.TryFit() ? fit : null, rows);
    }

    private static bool IsEnough(RateFit fit) =>
        fit.StretchSeconds >= LongestSeconds || (fit.StretchSeconds >= ShortestSeconds && fit.Rate.Uncertainty <= SettledHz);
}
