using System.Text.Json;

namespace PulseStream.Samples;

/// <summary>One object of a JSON file with its path, so that every complaint names file and member.</summary>
/// <param name="place">The file's name.</param>
/// <param name="path">Where the object stands in the file; empty at its root.</param>
/// <param name="element">The object.</param>
/// <param name="remedyForMissing">What a person can do about a missing member.</param>
public readonly struct JsonMembers(string place, string path, JsonElement element, string remedyForMissing)
{
    private const int LongestQuote = 40;

    /// <summary>What was found, in a word or as it stands, short enough for a sentence.</summary>
    /// <param name="element">Any value.</param>
    public static string Describe(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => "a text",
        _ => element.GetRawText() is { Length: <= LongestQuote } raw ? raw : "a very long number",
    };

    /// <summary>Text of a file made fit for one sentence: no line breaks, no endless text.</summary>
    /// <param name="text">As it stands in the file.</param>
    public static string Shorten(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= LongestQuote ? line : $"{line[..LongestQuote]}…";
    }

    /// <summary>Path of a member from the file's root.</summary>
    /// <param name="member">Its name.</param>
    public string PathOf(string member) => path.Length == 0 ? member : $"{path}.{member}";

    /// <summary>A complaint about a member.</summary>
    /// <param name="member">Its name, or a name with an index.</param>
    /// <param name="problem">What was expected and found.</param>
    /// <param name="remedy">What the person can do.</param>
    public BadInputException Wrong(string member, string problem, string remedy) => new($"{place}, {PathOf(Shorten(member))}", problem, remedy);

    /// <summary>A complaint about a member's value.</summary>
    /// <param name="member">Its name.</param>
    /// <param name="expected">What was expected.</param>
    /// <param name="found">What stands there.</param>
    public BadInputException Expected(string member, string expected, JsonElement found) =>
        Wrong(member, $"expected {expected}, found {Describe(found)}", "Correct it and run again");

    /// <summary>Refuses members that are not known here.</summary>
    /// <param name="members">The known ones.</param>
    /// <exception cref="BadInputException">There is another one.</exception>
    public void AllowOnly(params ReadOnlySpan<string> members)
    {
        foreach (var property in element.EnumerateObject())
        {
            if (!members.Contains(property.Name))
            {
                throw Wrong(property.Name, "this member is unknown", $"Remove it or correct its name; known here: {string.Join(", ", members)}");
            }
        }
    }

    /// <summary>Whether a member is there.</summary>
    /// <param name="member">Its name.</param>
    public bool Has(string member) => element.TryGetProperty(member, out _);

    /// <summary>A member's value.</summary>
    /// <param name="member">Its name.</param>
    /// <exception cref="BadInputException">It is missing.</exception>
    public JsonElement Value(string member) => element.TryGetProperty(member, out var value)
        ? value
        : throw Wrong(member, "this member is missing", remedyForMissing);

    /// <summary>A text that is not empty.</summary>
    /// <param name="member">Its name.</param>
    /// <exception cref="BadInputException">It is missing or no such text.</exception>
    public string Text(string member)
    {
        var value = Value(member);
        return value.ValueKind == JsonValueKind.String && value.GetString() is { } text && !string.IsNullOrWhiteSpace(text)
            ? text
            : throw Expected(member, "a text in quotes, not empty", value);
    }

    /// <summary>A finite number within limits.</summary>
    /// <param name="member">Its name.</param>
    /// <param name="from">Least value.</param>
    /// <param name="to">Largest value; <see cref="double.MaxValue"/> for none.</param>
    /// <exception cref="BadInputException">It is missing, no number or outside the limits.</exception>
    public double Number(string member, double from, double to)
    {
        var value = Value(member);
        return value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var number) && number >= from && number <= to
            ? number
            : throw Expected(member, to == double.MaxValue ? $"a number, {from} or more" : $"a number from {from} to {to}", value);
    }
}
