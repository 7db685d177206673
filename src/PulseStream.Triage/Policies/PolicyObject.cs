using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Triage.Policies;

/// <summary>One object of a policy file: members with a level, lists, minutes.</summary>
internal readonly struct PolicyObject(string place, string path, JsonElement element)
{
    private readonly JsonMembers members = new(place, path, element, "Add it; the default policy shows how");

    public BadInputException Wrong(string member, string problem, string remedy) => members.Wrong(member, problem, remedy);

    public void AllowOnly(params ReadOnlySpan<string> known) => members.AllowOnly(known);

    public bool Has(string member) => members.Has(member);

    public string Text(string member) => members.Text(member);

    public double Number(string member, double from, double to) => members.Number(member, from, to);

    public PolicyObject Object(string member)
    {
        var value = members.Value(member);
        return value.ValueKind == JsonValueKind.Object ? new PolicyObject(place, members.PathOf(member), value) : throw members.Expected(member, "an object in { }", value);
    }

    public PolicyObject[] List(string member)
    {
        var value = members.Value(member);
        if (value.ValueKind != JsonValueKind.Array || value.GetArrayLength() == 0)
        {
            throw members.Expected(member, "a list in [ ] with at least one object", value);
        }

        var objects = new PolicyObject[value.GetArrayLength()];
        for (var i = 0; i < objects.Length; i++)
        {
            var item = $"{member}[{i}]";
            objects[i] = value[i].ValueKind == JsonValueKind.Object ? new PolicyObject(place, members.PathOf(item), value[i]) : throw members.Expected(item, "an object in { }", value[i]);
        }

        return objects;
    }

    public int Whole(string member, int from, int to)
    {
        var value = members.Value(member);
        return value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out var number) && number >= from && number <= to
            ? number
            : throw members.Expected(member, $"a whole number from {from} to {to}", value);
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
        var value = members.Value(member);
        return StringOf(value) is { } name && AdviceLevelName.TryParse(name, out var level)
            ? level
            : throw Wrong(member, $"expected one of {AdviceLevelName.All}, found {(StringOf(value) is { } found ? JsonMembers.Shorten(found) : JsonMembers.Describe(value))}", "Write one of them in quotes");
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
}
