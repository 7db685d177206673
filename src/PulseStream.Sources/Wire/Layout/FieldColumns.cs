using PulseStream.Samples;
using PulseStream.Sources.Csv;

namespace PulseStream.Sources.Wire.Layout;

/// <summary>What fields mean, and whether they make a recording.</summary>
internal static class FieldColumns
{
    private const string Skipped = "-";

    /// <summary>The names that a field may have.</summary>
    public static string[] Names { get; } =
        [.. Enumerable.Range(0, (int)CsvColumn.Ignored).Select(at => CsvColumnNames.Of((CsvColumn)at)), Skipped];

    public static CsvColumn Named(string name) => CsvColumnNames.Find(name);

    /// <summary>What the samples of some fields carry.</summary>
    /// <exception cref="BadInputException">A field stands twice, light is missing, or an axis of acceleration is.</exception>
    public static SampleColumns Check(LayoutMembers members, IEnumerable<CsvColumn> fields)
    {
        var known = fields.Where(column => column != CsvColumn.Ignored).ToArray();
        if (known.GroupBy(column => column).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            throw members.Wrong("fields", $"expected each field once, found '{CsvColumnNames.Of(twice.Key)}' twice");
        }

        if (!known.Contains(CsvColumn.Infrared) && !known.Contains(CsvColumn.Pleth))
        {
            throw members.Wrong("fields", "expected a field 'infrared' or 'pleth', found neither");
        }

        CsvColumn[] axes = [CsvColumn.AccelerationX, CsvColumn.AccelerationY, CsvColumn.AccelerationZ];
        if (known.Count(axes.Contains) is 1 or 2)
        {
            throw members.Wrong("fields", "expected all of accel_x, accel_y and accel_z or none, found some");
        }

        return known.Aggregate(SampleColumns.None, (all, column) => all | CsvColumnNames.FlagOf(column));
    }
}
