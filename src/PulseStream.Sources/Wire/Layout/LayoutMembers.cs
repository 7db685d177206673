using System.Globalization;
using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Sources.Wire.Layout;

/// <summary>One object of a layout file, with the members that have usual values.</summary>
internal readonly struct LayoutMembers
{
    private readonly JsonMembers _members;
    private readonly string _place;

    public LayoutMembers(string place, string path, JsonElement element)
    {
        _place = place;
        _members = new(place, path, element, "Add it and run again");
        if (element.ValueKind != JsonValueKind.Object)
        {
            throw new BadInputException(path.Length == 0 ? place : $"{place}, {path}", $"expected an object, found {JsonMembers.Describe(element)}", "Correct it and run again");
        }
    }

    public void AllowOnly(params ReadOnlySpan<string> known) => _members.AllowOnly(known);

    public bool Has(string member) => _members.Has(member);

    public BadInputException Wrong(string member, string problem) => _members.Wrong(member, problem, "Correct it and run again");

    public string Text(string member) => _members.Text(member);

    /// <summary>A text that may consist of blanks.</summary>
    public string AnyText(string member)
    {
        var value = _members.Value(member);
        return value.ValueKind == JsonValueKind.String ? value.GetString()! : throw _members.Expected(member, "a text in quotes", value);
    }

    public double Number(string member, double from, double to, double? usual = null) =>
        usual is { } known && !Has(member) ? known : _members.Number(member, from, to);

    public int Whole(string member, int from, int to, int? usual = null)
    {
        var number = Number(member, from, to, usual);
        return Math.Floor(number) == number ? (int)number : throw _members.Expected(member, $"a whole number from {from} to {to}", _members.Value(member));
    }

    public bool IsTrue(string member)
    {
        if (!Has(member))
        {
            return false;
        }

        var value = _members.Value(member);
        return value.ValueKind switch
        {
            JsonValueKind.True => true,
            JsonValueKind.False => false,
            _ => throw _members.Expected(member, "true or false", value),
        };
    }

    /// <summary>One of some words; the first of them where the member is not there and has a usual value.</summary>
    public string OneOf(string member, bool isNeeded, params ReadOnlySpan<string> words)
    {
        if (!isNeeded && !Has(member))
        {
            return words[0];
        }

        var value = _members.Value(member);
        return value.ValueKind == JsonValueKind.String && words.Contains(value.GetString()!)
            ? value.GetString()!
            : throw Wrong(member, $"expected one of {string.Join(", ", words)}, found {Shown(value)}");
    }

    /// <summary>Bytes written in hexadecimal, with or without blanks or 0x.</summary>
    public byte[] Hex(string member, int longest)
    {
        var value = _members.Value(member);
        var digits = value.ValueKind == JsonValueKind.String ? value.GetString()!.Replace(" ", "", StringComparison.Ordinal).Replace("0x", "", StringComparison.OrdinalIgnoreCase) : "";
        return digits.Length > 0 && digits.Length % 2 == 0 && digits.Length / 2 <= longest && digits.All(char.IsAsciiHexDigit)
            ? Convert.FromHexString(digits)
            : throw Wrong(member, $"expected 1 to {longest} bytes as pairs of hexadecimal digits in quotes, found {Shown(value)}");
    }

    /// <summary>Bits written in hexadecimal, in quotes.</summary>
    public uint Mask(string member, int bytes)
    {
        var all = (uint)((1UL << (8 * bytes)) - 1);
        if (!Has(member))
        {
            return all;
        }

        var value = _members.Value(member);
        var text = value.ValueKind == JsonValueKind.String ? value.GetString()! : "";
        text = text.StartsWith("0x", StringComparison.OrdinalIgnoreCase) ? text[2..] : text;
        return uint.TryParse(text, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var mask) && mask != 0 && mask <= all
            ? mask
            : throw Wrong(member, $"expected hexadecimal digits in quotes, not zero, at most {all:X}, found {Shown(value)}");
    }

    public LayoutMembers Object(string member) => new(_place, _members.PathOf(member), _members.Value(member));

    public LayoutMembers Entry(string path, JsonElement entry) => new(_place, path, entry);

    public BadInputException WrongEntry(string path, string problem) => new($"{_place}, {path}", problem, "Correct it and run again");

    /// <summary>The entries of a list with at least one, each with its path.</summary>
    public IEnumerable<(string Path, JsonElement Entry)> List(string member)
    {
        var value = _members.Value(member);
        if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() == 0)
        {
            throw Wrong(member, $"expected a list of one or more fields, found {(value.ValueKind == JsonValueKind.Array ? "an empty one" : Shown(value))}");
        }

        var path = _members.PathOf(member);
        return value.EnumerateArray().Select((entry, at) => ($"{path}[{at}]", entry));
    }

    private static string Shown(JsonElement value) =>
        value.ValueKind == JsonValueKind.String ? $"'{JsonMembers.Shorten(value.GetString()!)}'" : JsonMembers.Describe(value);
}
