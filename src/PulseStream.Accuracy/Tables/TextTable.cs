using System.Text;
using System.Text.Unicode;
using PulseStream.Samples;

namespace PulseStream.Accuracy.Tables;

/// <summary>
/// A table as CSV: UTF-8 with or without byte order mark, LF or CRLF, comma-separated, one header line, columns found by
/// name in any order, letter case ignored. A field may stand in double quotes.
/// </summary>
public sealed class TextTable
{
    private const int LongestQuote = 40;
    private const int MostNamed = 20;

    private readonly Dictionary<string, int> columns = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<TextRow> rows = [];

    private TextTable(string place) => Place = place;

    /// <summary>The file's name, for messages.</summary>
    public string Place { get; }

    /// <summary>Rows in the order of the file.</summary>
    public IReadOnlyList<TextRow> Rows => rows;

    /// <summary>Names of columns that nobody asked for, quoted; empty where there is none.</summary>
    public string Unknown { get; private set; } = "";

    /// <summary>Reads a table.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <param name="required">Columns that have to be there.</param>
    /// <param name="optional">Columns that may be there.</param>
    /// <exception cref="BadInputException">It is no such table, or it has no row.</exception>
    public static TextTable Parse(ReadOnlyMemory<byte> utf8, string place, IReadOnlyList<string> required, IReadOnlyList<string> optional)
    {
        ArgumentNullException.ThrowIfNull(required);
        ArgumentNullException.ThrowIfNull(optional);
        var table = new TextTable(place);
        var lines = table.TextOf(utf8.Span).Split('\n');
        var names = table.ReadHeader(lines[0].TrimEnd('\r'), required, optional);
        for (var i = 1; i < lines.Length; i++)
        {
            table.ReadRow(lines[i].TrimEnd('\r'), i + 1, names);
        }

        return table.rows.Count > 0
            ? table
            : throw new BadInputException(place, "it holds a header and no rows", "Check that the table was written and run again");
    }

    /// <summary>Whether a column is there.</summary>
    /// <param name="column">Its name.</param>
    public bool Has(string column) => columns.ContainsKey(column);

    internal static string Shown(string text)
    {
        var line = string.Concat(text.Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));
        return line.Length <= LongestQuote ? line : line[..LongestQuote] + "…";
    }

    internal int? FieldOf(string column) => columns.TryGetValue(column, out var at) ? at : null;

    private string TextOf(ReadOnlySpan<byte> utf8)
    {
        if (utf8.IsEmpty)
        {
            throw new BadInputException(Place, "it is empty, expected a header line and rows", "Check that the table was written and run again");
        }

        if (!Utf8.IsValid(utf8) || utf8.Contains((byte)0))
        {
            throw new BadInputException(Place, "expected CSV as UTF-8 text, found other bytes", "Save it as CSV in UTF-8 and run again");
        }

        var text = Encoding.UTF8.GetString(utf8);
        return text.StartsWith('\uFEFF') ? text[1..] : text;
    }

    private int ReadHeader(string header, IReadOnlyList<string> required, IReadOnlyList<string> optional)
    {
        var names = FieldsOf(header, 1);
        for (var at = 0; at < names.Length; at++)
        {
            if (!columns.TryAdd(names[at], at) && required.Concat(optional).Contains(names[at], StringComparer.OrdinalIgnoreCase))
            {
                throw new BadInputException($"{Place}, line 1", $"column '{Shown(names[at])}' stands there twice", "Remove or rename one of them and run again");
            }
        }

        if (required.FirstOrDefault(name => !columns.ContainsKey(name)) is { } missing)
        {
            throw new BadInputException($"{Place}, line 1", $"no column '{missing}', found '{Shown(header)}'", RemedyFor(header, names, missing));
        }

        var known = required.Concat(optional).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var unknown = names.Where(name => !known.Contains(name)).Select(name => $"'{Shown(name)}'").Distinct(StringComparer.Ordinal).ToArray();
        Unknown = string.Join(", ", unknown.Take(MostNamed)) + (unknown.Length > MostNamed ? $" and {unknown.Length - MostNamed} more" : "");
        return names.Length;
    }

    private static string RemedyFor(string header, string[] names, string missing) => names.Length == 1 && header.AsSpan().IndexOfAny(";\t") >= 0
        ? "Separate the columns with commas, write numbers with a decimal point and run again"
        : $"Name the column '{missing}' in the header line and run again";

    private void ReadRow(string text, int line, int expected)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return;
        }

        var fields = FieldsOf(text, line);
        rows.Add(fields.Length == expected
            ? new TextRow(this, line, fields)
            : throw new BadInputException($"{Place}, line {line}", $"expected {expected} fields as in the header, found {fields.Length}", "Correct or remove the row and run again"));
    }

    private string[] FieldsOf(string text, int line)
    {
        if (!text.Contains('"', StringComparison.Ordinal))
        {
            return text.Split(',', StringSplitOptions.TrimEntries);
        }

        var fields = new List<string>();
        var field = new StringBuilder();
        var isQuoted = false;
        for (var i = 0; i < text.Length; i++)
        {
            var isDoubled = isQuoted && text[i] == '"' && i + 1 < text.Length && text[i + 1] == '"';
            if (isDoubled)
            {
                field.Append('"');
                i++;
            }
            else if (text[i] == '"')
            {
                isQuoted = !isQuoted;
            }
            else if (text[i] == ',' && !isQuoted)
            {
                fields.Add(field.ToString().Trim());
                field.Clear();
            }
            else
            {
                field.Append(text[i]);
            }
        }

        fields.Add(field.ToString().Trim());
        return isQuoted
            ? throw new BadInputException($"{Place}, line {line}", "a quotation mark opens and does not close", "Close it and run again")
            : [.. fields];
    }
}
