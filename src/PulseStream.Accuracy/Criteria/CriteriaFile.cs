using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Accuracy.Criteria;

/// <summary>Reads criteria from JSON; comments and trailing commas are allowed, unknown members are not.</summary>
public static class CriteriaFile
{
    private const string DefaultFile = "criteria.json";

    private static readonly (string Word, CriterionMeasure Measure)[] Measures =
    [
        ("arms", CriterionMeasure.Arms),
        ("bias", CriterionMeasure.Bias),
        ("precision", CriterionMeasure.Precision),
        ("pairs", CriterionMeasure.Pairs),
        ("subjects", CriterionMeasure.Subjects),
        ("darkSubjects", CriterionMeasure.DarkSubjects),
        ("groupDifference", CriterionMeasure.GroupDifference),
    ];

    /// <summary>The criteria in force where none are told: ISO 80601-2-61:2017 and the FDA's guidance of 2013.</summary>
    public static IReadOnlyList<Criterion> Default { get; } = ReadDefault();

    /// <summary>Reads a file.</summary>
    /// <param name="utf8Json">Its bytes.</param>
    /// <param name="place">Its name, for messages.</param>
    /// <exception cref="BadInputException">It is no such file.</exception>
    public static IReadOnlyList<Criterion> Parse(ReadOnlyMemory<byte> utf8Json, string place) => StrictJson.Read(utf8Json, place, root => Read(place, root));

    private static IReadOnlyList<Criterion> ReadDefault()
    {
        using var stream = typeof(CriteriaFile).Assembly.GetManifestResourceStream(DefaultFile)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return Parse(bytes, DefaultFile);
    }

    private static List<Criterion> Read(string place, JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            throw new BadInputException(place, $"expected an object with 'name' and 'criteria', found {JsonMembers.Describe(root)}", "Give a file of criteria");
        }

        var members = new JsonMembers(place, "", root, "Add it and run again");
        members.AllowOnly("name", "criteria");
        members.Text("name");
        var list = members.Value("criteria");
        if (list.ValueKind != JsonValueKind.Array || list.EnumerateArray().Any(entry => entry.ValueKind != JsonValueKind.Object))
        {
            throw members.Expected("criteria", "a list of objects", list);
        }

        return [.. list.EnumerateArray().Select((entry, i) => Read(new JsonMembers(place, $"criteria[{i}]", entry, "Add it and run again")))];
    }

    private static Criterion Read(JsonMembers members)
    {
        members.AllowOnly("name", "quantity", "measure", "from", "to", "most", "least", "leastShare", "groups", "otherGroups", "sites", "inForce", "source");
        var quantity = !members.Has("quantity") || Word(members, "quantity", "spo2", "pulse") == "spo2" ? Quantity.Saturation : Quantity.PulseRate;
        var scale = QuantityScale.Of(quantity);
        var from = members.Has("from") ? members.Number("from", scale.Lowest, scale.Highest) : scale.Lowest;
        var isLeast = members.Has("least");
        if (isLeast == members.Has("most"))
        {
            throw members.Wrong(isLeast ? "most" : "least", "expected either 'most' or 'least', found both or neither", "Give one of them");
        }

        return new()
        {
            Name = members.Text("name"),
            Quantity = quantity,
            Measure = MeasureOf(members),
            From = from,
            To = members.Has("to") ? members.Number("to", from, scale.Highest) : scale.Highest,
            Limit = members.Number(isLeast ? "least" : "most", 0, double.MaxValue),
            IsLeast = isLeast,
            LeastShare = members.Has("leastShare") ? members.Number("leastShare", 0, 1) : 0,
            Groups = Words(members, "groups"),
            OtherGroups = Words(members, "otherGroups"),
            Sites = Words(members, "sites"),
            InForce = !members.Has("inForce") || Flag(members, "inForce"),
            Source = members.Text("source"),
        };
    }

    private static CriterionMeasure MeasureOf(JsonMembers members)
    {
        var word = Word(members, "measure", [.. Measures.Select(measure => measure.Word)]);
        return Measures.First(measure => measure.Word == word).Measure;
    }

    private static string Word(JsonMembers members, string member, params string[] known)
    {
        var word = members.Text(member);
        return known.Contains(word, StringComparer.Ordinal)
            ? word
            : throw members.Wrong(member, $"expected one of {string.Join(", ", known)}, found '{JsonMembers.Shorten(word)}'", "Correct it and run again");
    }

    private static bool Flag(JsonMembers members, string member) => members.Value(member) is { ValueKind: JsonValueKind.True or JsonValueKind.False } value
        ? value.GetBoolean()
        : throw members.Expected(member, "true or false", members.Value(member));

    private static IReadOnlyList<string> Words(JsonMembers members, string member)
    {
        if (!members.Has(member))
        {
            return [];
        }

        var list = members.Value(member);
        return list.ValueKind == JsonValueKind.Array && list.EnumerateArray().All(entry => entry.ValueKind == JsonValueKind.String)
            ? [.. list.EnumerateArray().Select(entry => entry.GetString()!)]
            : throw members.Expected(member, "a list of texts", list);
    }
}
