namespace PulseStream.Sources.Csv;

/// <summary>What a row says of its place in the recording.</summary>
/// <param name="Counter">The column 'sample', 0 where there is none.</param>
/// <param name="Seconds">The column 'time_s', NaN where there is none.</param>
internal readonly record struct RowStamp(long Counter, double Seconds)
{
    /// <summary>The stamp of the row that holds these numbers.</summary>
    /// <param name="values">One a <see cref="CsvColumn"/>, NaN where there is no such column.</param>
    /// <param name="hasCounter">Whether there is a column 'sample'; it is a whole number then.</param>
    public static RowStamp Of(ReadOnlySpan<double> values, bool hasCounter) =>
        new(hasCounter ? unchecked((long)values[(int)CsvColumn.Sample]) : 0, values[(int)CsvColumn.Time]);
}
