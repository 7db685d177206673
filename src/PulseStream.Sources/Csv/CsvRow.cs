using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>A row whose numbers are good.</summary>
/// <param name="Line">Line of the file, the header is line 1.</param>
/// <param name="Stamp">What it says of its place.</param>
/// <param name="Sample">What it measured.</param>
internal readonly record struct CsvRow(long Line, RowStamp Stamp, Sample Sample)
{
    /// <summary>The sample of the row that holds these numbers.</summary>
    /// <param name="values">One a <see cref="CsvColumn"/>, NaN where there is no such column.</param>
    public static Sample SampleOf(ReadOnlySpan<double> values) => new(
        values[(int)CsvColumn.Red],
        values[(int)CsvColumn.Infrared],
        values[(int)CsvColumn.Ambient],
        values[(int)CsvColumn.Pleth],
        values[(int)CsvColumn.AccelerationX],
        values[(int)CsvColumn.AccelerationY],
        values[(int)CsvColumn.AccelerationZ]);
}
