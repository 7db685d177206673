using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Readings.Curves;

/// <summary>The members of a curve file.</summary>
internal readonly struct CurveMembers
{
    private readonly JsonMembers members;

    public CurveMembers(string place, JsonElement curve)
    {
        members = new(place, "", curve, "Add it and run again");
        if (curve.ValueKind != JsonValueKind.Object)
        {
            throw new BadInputException(place, $"expected an object with the members of a curve, found {JsonMembers.Describe(curve)}", "Give a curve file");
        }
    }

    public BadInputException Wrong(string member, string problem, string remedy) => members.Wrong(member, problem, remedy);

    public void AllowOnly(params ReadOnlySpan<string> known) => members.AllowOnly(known);

    public bool Has(string member) => members.Has(member);

    public string Text(string member) => members.Text(member);

    public double Number(string member, double from, double to) => members.Number(member, from, to);

    public double[] Numbers(string member)
    {
        var value = members.Value(member);
        var numbers = value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().Select(NumberOf).ToArray() : [];
        return numbers.Length >= 2 && numbers.All(number => number is not null)
            ? [.. numbers.Select(number => number!.Value)]
            : throw members.Expected(member, "a list of two or more numbers", value);
    }

    public (double[] Ratios, double[] Percents) Pairs(string member)
    {
        var value = members.Value(member);
        var pairs = value.ValueKind == JsonValueKind.Array ? value.EnumerateArray().Select(PairOf).ToArray() : [];
        if (pairs.Length < 2 || pairs.Any(pair => pair is null))
        {
            throw members.Expected(member, "a list of two or more pairs [R, SpO2]", value);
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
}
