using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>The names of the columns, for the reader and the writer alike.</summary>
internal static class CsvColumnNames
{
    private static readonly string[] Names =
        ["sample", "time_s", "red", "infrared", "ambient", "pleth", "accel_x", "accel_y", "accel_z"];

    public static string Of(CsvColumn column) => Names[(int)column];

    public static CsvColumn Find(string name)
    {
        var at = Array.FindIndex(Names, known => known.Equals(name, StringComparison.OrdinalIgnoreCase));
        return at < 0 ? CsvColumn.Ignored : (CsvColumn)at;
    }

    /// <summary>The columns that carry values of a sample, in the order in which they are written.</summary>
    public static CsvColumn[] Carrying(SampleColumns columns) =>
        [.. Enumerable.Range((int)CsvColumn.Red, CsvColumn.Ignored - CsvColumn.Red).Select(at => (CsvColumn)at)
            .Where(column => columns.HasFlag(FlagOf(column)))];

    public static SampleColumns FlagOf(CsvColumn column) => column switch
    {
        CsvColumn.Red => SampleColumns.Red,
        CsvColumn.Infrared => SampleColumns.Infrared,
        CsvColumn.Ambient => SampleColumns.Ambient,
        CsvColumn.Pleth => SampleColumns.Pleth,
        CsvColumn.AccelerationX or CsvColumn.AccelerationY or CsvColumn.AccelerationZ => SampleColumns.Acceleration,
        _ => SampleColumns.None,
    };
}
