using System.Text;
using PulseStream.Samples;
using PulseStream.Sources.Signals;

namespace PulseStream.Sources.Csv;

/// <summary>What the header line says: which field holds what.</summary>
internal sealed class CsvLayout
{
    private const SampleColumns AnyLight = SampleColumns.Infrared | SampleColumns.Pleth;

    // A message is one line that a person reads.
    private const int MostNamed = 20;

    private readonly List<string> _unknown = [];

    private CsvLayout(string source, string[] names, SignalMap map)
    {
        Fields = new CsvColumn[names.Length];
        for (var at = 0; at < names.Length; at++)
        {
            Fields[at] = ColumnOf(names[at], map);
            if (Fields[at] == CsvColumn.Ignored)
            {
                _unknown.Add($"'{names[at]}'");
            }
            else if (Fields.AsSpan(0, at).Contains(Fields[at]))
            {
                throw new BadInputException($"{source}, line 1", $"column '{names[at]}' stands there twice", "Remove or rename one of them and run again");
            }
        }

        DropLoneAxes();
        (HasCounter, HasTime) = (Fields.Contains(CsvColumn.Sample), Fields.Contains(CsvColumn.Time));
        Columns = Fields.Aggregate(SampleColumns.None, (flags, field) => flags | CsvColumnNames.FlagOf(field));
    }

    /// <summary>What each field of a row holds.</summary>
    public CsvColumn[] Fields { get; }

    public SampleColumns Columns { get; }

    public bool HasCounter { get; }

    public bool HasTime { get; }

    /// <summary>The names of the columns that are ignored, quoted, or an empty text.</summary>
    public string Unknown => string.Join(", ", _unknown.Take(MostNamed))
        + (_unknown.Count > MostNamed ? $" and {_unknown.Count - MostNamed} more" : "");

    /// <exception cref="BadInputException">The line is no header of a recording.</exception>
    public static CsvLayout Read(ReadOnlySpan<byte> line, string source, SignalMap map)
    {
        RefuseOtherText(line, source);
        line = line.StartsWith("\uFEFF"u8) ? line["\uFEFF"u8.Length..] : line;
        var names = Encoding.UTF8.GetString(line).Split(',').Select(name => PrintableText.Of(name.Trim(' ', '\t', '"'))).ToArray();
        RefuseMissing(names, source, map);
        var layout = new CsvLayout(source, names, map);
        return (layout.Columns & AnyLight) != SampleColumns.None ? layout : throw new BadInputException(
            $"{source}, line 1",
            $"no column 'infrared' or 'pleth', found '{PrintableText.Of(line)}'",
            line.IndexOfAny(";\t"u8) >= 0 && names.Length == 1
                ? "Separate the columns with commas, write numbers with a decimal point and run again"
                : "Name the column with the infrared light 'infrared' and run again");
    }

    // What a person named carries what they said; a column whose channel another one carries says nothing.
    private static CsvColumn ColumnOf(string name, SignalMap map)
    {
        foreach (var (channel, signal) in map.Names)
        {
            if (signal.Equals(name, StringComparison.OrdinalIgnoreCase))
            {
                return CsvColumnNames.Find(Channels.NameOf(channel));
            }
        }

        var own = CsvColumnNames.Find(name);
        return map.Names.Keys.Any(channel => CsvColumnNames.Find(Channels.NameOf(channel)) == own) ? CsvColumn.Ignored : own;
    }

    private static void RefuseMissing(string[] names, string source, SignalMap map)
    {
        if (map.Names.Values.FirstOrDefault(signal => !names.Contains(signal, StringComparer.OrdinalIgnoreCase)) is { } missing)
        {
            throw new BadInputException($"{source}, line 1", $"there is no column '{missing}', only {string.Join(", ", names.Take(MostNamed).Select(name => $"'{name}'"))}", "Correct --map and run again");
        }
    }

    private static void RefuseOtherText(ReadOnlySpan<byte> line, string source)
    {
        if (IsUtf16(line))
        {
            throw new BadInputException($"{source}, line 1", "expected UTF-8 text, found UTF-16", "Save the recording as UTF-8 and run again");
        }

        if (line.Contains((byte)0))
        {
            throw new BadInputException($"{source}, line 1", "expected a header line, found zero bytes, which no text holds", "Give a recording as CSV text");
        }

        if (line.Contains((byte)'\r'))
        {
            throw new BadInputException($"{source}, line 1", "the lines end in a lone CR, expected LF or CRLF", "Save the recording with LF line ends and run again");
        }
    }

    // Names in Latin letters have a zero in every second byte as UTF-16; the line end may have cut the last pair.
    private static bool IsUtf16(ReadOnlySpan<byte> line)
    {
        if (line.StartsWith<byte>([0xFF, 0xFE]) || line.StartsWith<byte>([0xFE, 0xFF]))
        {
            return true;
        }

        Span<int> zeros = [0, 0];
        for (var at = 0; at < line.Length; at++)
        {
            zeros[at % 2] += line[at] == 0 ? 1 : 0;
        }

        var most = Math.Max(zeros[0], zeros[1]);
        return most >= 2 && most > line.Length / 3 && Math.Min(zeros[0], zeros[1]) <= 1;
    }

    // Motion needs all three axes: without one the size of an acceleration is unknown.
    private void DropLoneAxes()
    {
        var axes = Fields.Where(field => CsvColumnNames.FlagOf(field) == SampleColumns.Acceleration).ToArray();
        if (axes.Length is 1 or 2)
        {
            _unknown.AddRange(axes.Select(axis => $"'{CsvColumnNames.Of(axis)}' (not all three axes are there)"));
            foreach (var axis in axes)
            {
                Fields.AsSpan().Replace(axis, CsvColumn.Ignored);
            }
        }
    }
}
