using System.Text;
using System.Text.Json;
using PulseStream.Samples;
using PulseStream.Sources.Csv;

namespace PulseStream.Sources.Wire.Layout;

/// <summary>Reads the member `text` of a layout file.</summary>
internal static class TextMembers
{
    private const string AnyBlanks = "whitespace";
    private const int LongestSeparator = 16;

    // Beyond any unit; keeps a slip from making infinite values.
    private const double LargestFactor = 1e12;

    public static TextLayout Read(LayoutMembers members)
    {
        members.AllowOnly("separator", "startsWith", "checksum", "fields");
        var fields = members.List("fields").Select(field => ReadField(members, field.Path, field.Entry)).ToArray();
        var hasChecksum = members.OneOf("checksum", isNeeded: false, "none", "xor-hex") != "none";
        return new TextLayout(ReadSeparator(members), members.Has("startsWith") ? Encoding.UTF8.GetBytes(members.Text("startsWith")) : [], hasChecksum, fields);
    }

    // A blank or a tab is a separator, though no text for people.
    private static byte[] ReadSeparator(LayoutMembers members)
    {
        var separator = members.AnyText("separator");
        if (separator.Length is 0 or > LongestSeparator || separator.AsSpan().ContainsAny('\r', '\n'))
        {
            throw members.Wrong("separator", $"expected 1 to {LongestSeparator} characters of a line, or {AnyBlanks}, found otherwise");
        }

        return separator == AnyBlanks ? [] : Encoding.UTF8.GetBytes(separator);
    }

    // A name alone, or an object where its numbers have to be scaled.
    private static TextField ReadField(LayoutMembers members, string path, JsonElement entry)
    {
        if (entry.ValueKind == JsonValueKind.String)
        {
            return FieldColumns.Names.Contains(entry.GetString()!)
                ? new TextField(FieldColumns.Named(entry.GetString()!), 1, 0)
                : throw members.WrongEntry(path, $"expected one of {string.Join(", ", FieldColumns.Names)}, found '{JsonMembers.Shorten(entry.GetString()!)}'");
        }

        var field = members.Entry(path, entry);
        field.AllowOnly("name", "scale", "add");
        var column = FieldColumns.Named(field.OneOf("name", isNeeded: true, FieldColumns.Names));
        var scale = field.Number("scale", -LargestFactor, LargestFactor, 1);
        return scale != 0 && (column != CsvColumn.Sample || scale == 1)
            ? new TextField(column, scale, field.Number("add", -LargestFactor, LargestFactor, 0))
            : throw field.Wrong("scale", $"expected a factor other than 0, and 1 for a counter, found {scale}");
    }
}
