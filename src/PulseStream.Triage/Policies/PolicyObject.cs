using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Triage.Policies;

/// <summary>One object of a policy file with its path, so that every complaint names file and member.</summary>
internal readonly struct PolicyObject(string place, string path, JsonElement element)
{
    private const int LongestQuote = 40;

    public static string Describe(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => "a text",
        _ => element.GetRawText() is { Length: <= LongestQuote } raw ? raw : "a very long number",
    };

    public BadInputException Wrong(string member, string problem, string remedy) => new($"{place}, {PathOf(Shorten(member))}", problem, remedy);

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

    public bool Has(string member) => element.TryGetProperty(member, out _);

    public PolicyObject Object(string member)
    {
        var value = Member(member);
        return value.ValueKind == JsonValueKind.Object ? new PolicyObject(place, PathOf(member), value) : throw Expected(member, "an object in { }", value);
    }

    public PolicyObject[] List(string member)
    {
        var value = Member(member);
        if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() == 0)
        {
            throw Expected(member, "a list in [ ] with at least one object", value);
        }

        var objects = new PolicyObject[value.GetArrayLength()];
        for (var i = 0; i < objects.Length; i++)
        {
            var item = $"{member}[{i}]";
            objects[i] = value[i].ValueKind == JsonValueKind.Object ? new PolicyObject(place, PathOf(item), value[i]) : throw Expected(item, "an object in { }", value[i]);
        }

        return objects;
    }

    public string Text(string member)
    {
        var value = Member(member);
        return StringOf(value) is { } text && !string.IsNullOrWhiteSpace(text) ? text : throw Expected(member, "a text in quotes, not empty", value);
    }

    public double Number(string member, double from, double to)
    {
        var value = Member(member);
        return value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var number) && number >= from && number <= to
            ? number
            : throw Expected(member, $"a number from {from} to {to}", value);
    }

    public int Whole(string member, int from, int to)
    {
        var value = Member(member);
        return value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out var number) && number >= from && number <= to
            ? number
            : throw Expected(member, $"a whole number from {from} to {to}", value);
    }

    public int? MinutesWhere(bool isRecheck, string member, int from, int to)
    {
        if (isRecheck)
        {
            return Whole(member, from, to);
        }

        return Has(member) ? throw Wrong(member, "minutes to a check, and no level here says recheck", "Remove it, or let a level say recheck") : null;
    }

    public AdviceLevel Level(string member)
    {
        var value = Member(member);
        return StringOf(value) is { } name && AdviceLevelName.TryParse(name, out var level)
            ? level
            : throw Wrong(member, $"expected one of {AdviceLevelName.All}, found {(StringOf(value) is { } found ? Shorten(found) : Describe(value))}", "Write one of them in quotes");
    }

    public AdviceLevel LevelWithoutMinutes(string member) => Level(member) is var level && level != AdviceLevel.Recheck
        ? level
        : throw Wrong(member, "recheck needs minutes, and this rule has none", "Use another level; bands and noReading can say recheck");

    public void NeverFalls(params ReadOnlySpan<(string Member, AdviceLevel Level)> rising)
    {
        for (var i = 1; i < rising.Length; i++)
        {
            if (rising[i].Level < rising[i - 1].Level)
            {
                throw Wrong(rising[i].Member, $"expected {AdviceLevelName.Of(rising[i - 1].Level)} or more, as '{rising[i - 1].Member}' says, found {AdviceLevelName.Of(rising[i].Level)}", "Let the worse case never be less urgent");
            }
        }
    }

    private static string? StringOf(JsonElement value) => value.ValueKind == JsonValueKind.String ? value.GetString() : null;

    // What a file holds goes into one sentence: no line breaks, no endless text.
    private static string Shorten(string text)
    {
        var line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= LongestQuote ? line : $"{line[..LongestQuote]}…";
    }

    private string PathOf(string member) => path.Length == 0 ? member : $"{path}.{member}";

    private JsonElement Member(string member) => element.TryGetProperty(member, out var value)
        ? value
        : throw Wrong(member, "this member is missing", "Add it; the default policy shows how");

    private BadInputException Expected(string member, string expected, JsonElement found) =>
        Wrong(member, $"expected {expected}, found {Describe(found)}", "Correct it and run again");
}
