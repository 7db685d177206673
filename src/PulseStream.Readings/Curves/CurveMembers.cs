using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Readings.Curves;

/// <summary>The members of a curve file, so that every complaint names file and member.</summary>
internal readonly struct CurveMembers
{
    private const int LongestQuote = 40;

    private readonly string place;
    private readonly JsonElement curve;

    public CurveMembers(string place, JsonElement curve)
    {
        (this.place, this.curve) = (place, curve);
        if (curve.ValueKind != JsonValueKind.Object)
        {
            throw new BadInputException(place, $"expected an object with the members of a curve, found {Describe(curve)}", "Give a curve file");
        }
    }

    public BadInputException Wrong(string member, string problem, string remedy) => new($"{place}, {member}", problem, remedy);

    public void AllowOnly(params ReadOnlySpan<string> members)
    {
        foreach (var property in curve.EnumerateObject())
        {
            if (!members.Contains(property.Name))
            {
                throw Wrong(Shorten(property.Name), "this member is unknown", $"Remove it or correct its name; known here: {string.Join(", ", members)}");
            }
        }
    }

    public bool Has(string member) => curve.TryGetProperty(member, out _);

    public string Text(string member)
    {
        var value = Member(member);
        return value.ValueKind == JsonValueKind.String && value.GetString() is { } text && !string.IsNullOrWhiteSpace(text)
            ? text
            : throw Expected(member, "a text in quotes, not empty", value);
    }

    public double Number(string member, double from, double to)
    {
        var value = Member(member);
        return NumberOf(value) is { } number && number >= from && number <= to
            ? number
            : throw Expected(member, to == double.MaxValue ? $"a number, {from} or more" : $"a number from {from} to {to}", value);
    }

    public double[] Numbers(string member)
    {
        var value = Member(member);
        var numbers = value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().Select(NumberOf).ToArray() : [];
        return numbers.Length >= 2 && numbers.All(number => number is not null)
            ? [.. numbers.Select(number => number!.Value)]
            : throw Expected(member, "a list of two or more numbers", value);
    }

    public (double[] Ratios, double[] Percents) Pairs(string member)
    {
        var value = Member(member);
        var pairs = value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().Select(PairOf).ToArray() : [];
        if (pairs.Length < 2 || pairs.Any(pair => pair is null))
        {
            throw Expected(member, "a list of two or more pairs [R, SpO2]", value);
        }

        for (var i = 1; i < pairs.Length; i++)
        {
            if (!(pairs[i]!.Value.Ratio > pairs[i - 1]!.Value.Ratio))
            {
                throw Wrong($"{member}[{i}]", $"expected an R above {pairs[i - 1]!.Value.Ratio}, found {pairs[i]!.Value.Ratio}", "Let R rise from pair to pair");
            }
        }

        return ([.. pairs.Select(pair => pair!.Value.Ratio)], [.. pairs.Select(pair => pair!.Value.Percent)]);
    }

    private static double? NumberOf(JsonElement value) =>
        value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var number) && double.IsFinite(number) ? number : null;

    private static (double Ratio, double Percent)? PairOf(JsonElement value) =>
        value.ValueKind == JsonValueKind.Array && value.GetArrayLength() == 2 && NumberOf(value[0]) is { } ratio && NumberOf(value[1]) is { } percent
            ? (ratio, percent)
            : null;

    private static string Describe(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => $"a list of {value.GetArrayLength()}",
        JsonValueKind.String => "a text",
        _ => Shorten(value.GetRawText()),
    };

    // What a file holds goes into one sentence: no line breaks, no endless text.
    private static string Shorten(string text)
    {
        var line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= LongestQuote ? line : $"{line[..LongestQuote]}…";
    }

    private JsonElement Member(string member) => curve.TryGetProperty(member, out var value)
        ? value
        : throw Wrong(member, "this member is missing", "Add it and run again");

    private BadInputException Expected(string member, string expected, JsonElement found) =>
        Wrong(member, $"expected {expected}, found {Describe(found)}", "Correct it and run again");
}
