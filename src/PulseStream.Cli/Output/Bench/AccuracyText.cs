using PulseStream.Accuracy;
using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Statistics;
using PulseStream.Cli.Output.Text;

namespace PulseStream.Cli.Output.Bench;

/// <summary>A statement of accuracy for people, one A4 page.</summary>
internal static class AccuracyText
{
    private const int NameWidth = 18;

    public static IEnumerable<string> Lines(AccuracyStatement statement, string title)
    {
        foreach (var line in Wrapped.Lines(title))
        {
            yield return line;
        }

        foreach (var line in Overall(statement).Concat(Bands(statement)).Concat(Groups(statement)).Concat(Criteria(statement)))
        {
            yield return line;
        }

        foreach (var line in statement.Warnings.SelectMany(warning => Wrapped.Lines($"Warning: {warning}").Prepend("")))
        {
            yield return line;
        }
    }

    /// <summary>The verdict in one sentence.</summary>
    public static string Verdict(AccuracyStatement statement) => statement.Criteria switch
    {
        [] => "No criterion is in force.",
        [var only] => only.IsMet ? "The criterion in force is met." : "The criterion in force is not met.",
        var all when statement.IsMet => $"All {all.Count} criteria in force are met.",
        var all => $"Of {all.Count} criteria in force {all.Count(criterion => !criterion.IsMet)} {(all.Count(criterion => !criterion.IsMet) == 1 ? "is" : "are")} not met.",
    };

    /// <summary>A criterion with its limit and what was found.</summary>
    public static string Found(JudgedCriterion judged)
    {
        var scale = QuantityScale.Of(judged.Criterion.Quantity);
        var isCount = judged.Criterion.Measure is CriterionMeasure.Pairs or CriterionMeasure.Subjects or CriterionMeasure.DarkSubjects;
        var value = judged.Value is not { } found ? "no value" : isCount ? $"{found:0}" : $"{found:0.00}";
        var limit = isCount ? $"{judged.Limit:0}" : $"{judged.Limit:0.0#}";
        var isWhole = judged.Criterion.From <= scale.Lowest && judged.Criterion.To >= scale.Highest;
        return $"{value}, at {(judged.Criterion.IsLeast ? "least" : "most")} {limit}{(isWhole ? "" : $", over {judged.Criterion.From:0.##} to {judged.Criterion.To:0.##} {scale.Unit}")}";
    }

    /// <summary>An interval in brackets; empty where it is not known.</summary>
    public static string Shown(ConfidenceInterval? interval) => interval is { } known ? $"[{Shown(known.Low)}, {Shown(known.High)}]" : "";

    /// <summary>A number with two decimals and no minus zero; a dash where it is not known.</summary>
    public static string Shown(double? value) => value is { } known ? $"{Math.Round(known, 2) + 0.0:0.00}" : "-";

    private static IEnumerable<string> Overall(AccuracyStatement statement)
    {
        var unit = QuantityScale.Of(statement.Quantity).ErrorUnit;
        yield return "";
        yield return Row("bias", statement.All.Bias, unit, statement.BiasInterval);
        yield return Row("precision", statement.All.Precision, unit, statement.PrecisionInterval);
        yield return Row("A_rms", statement.All.Arms, unit, statement.ArmsInterval);
        if (statement.Limits is { } limits)
        {
            yield return Row("lower limit", limits.Low, unit, limits.LowInterval);
            yield return Row("upper limit", limits.High, unit, limits.HighInterval);
        }

        if (statement.Regression is { } line)
        {
            yield return $"{"  error's slope",-NameWidth}{line.Slope,8:0.000} {$"{unit} a {(statement.Quantity == Quantity.Saturation ? "point" : "beat")}",-16} {(line.SlopeInterval is { } ends ? $"[{ends.Low:0.000}, {ends.High:0.000}]" : "")}".TrimEnd();
        }

        yield return "  Error = reading - reference. Brackets: 95 % interval that respects subjects.";
        yield return "  Limits of agreement for a true value that varies (Bland, Altman 2007).";
    }

    private static string Row(string name, double? value, string unit, ConfidenceInterval? interval) =>
        $"{$"  {name}",-NameWidth}{Shown(value),8} {unit,-16} {Shown(interval)}".TrimEnd();

    private static IEnumerable<string> Bands(AccuracyStatement statement) =>
        Table($"reference, {QuantityScale.Of(statement.Quantity).Unit}", statement.Bands.Select(band => ($"{band.From:0.##} to {band.To:0.##}", band.Measures, band.ArmsInterval)));

    private static IEnumerable<string> Groups(AccuracyStatement statement)
    {
        if (statement.Groups.Count == 0)
        {
            yield break;
        }

        foreach (var line in Table("skin tone", statement.Groups.Select(group => (group.Name, group.Measures, group.ArmsInterval))))
        {
            yield return line;
        }

        if (statement.LargestDifference is { } largest)
        {
            yield return $"  largest difference in bias: {Cut(largest.Higher)} less {Cut(largest.Lower)} {Shown(largest.Difference)} {Shown(largest.Interval)}".TrimEnd();
        }
    }

    private static IEnumerable<string> Table(string title, IEnumerable<(string Name, Measures Measures, ConfidenceInterval? Arms)> rows) =>
        rows.Select(row => $"{$"  {Cut(row.Name)}",-NameWidth}{row.Measures.Count,6} {row.Measures.Subjects,9} {Shown(row.Measures.Bias),8} {Shown(row.Measures.Precision),10} {Shown(row.Measures.Arms),7}  {Shown(row.Arms)}".TrimEnd())
            .Prepend($"{$"  {title}",-NameWidth}{"pairs",6} {"subjects",9} {"bias",8} {"precision",10} {"A_rms",7}")
            .Prepend("");

    private static string Cut(string name) => name.Length > NameWidth - 3 ? name[..(NameWidth - 4)] + "…" : name;

    private static IEnumerable<string> Criteria(AccuracyStatement statement)
    {
        yield return "";
        yield return Verdict(statement);
        foreach (var line in statement.Criteria.SelectMany(judged => Criterion(judged, judged.IsMet ? "met    " : "NOT MET")))
        {
            yield return line;
        }

        foreach (var judged in statement.NotInForce)
        {
            yield return $"  not in force: {judged.Criterion.Name}: {Found(judged)} ({(judged.IsMet ? "met" : "not met")})";
        }
    }

    private static IEnumerable<string> Criterion(JudgedCriterion judged, string word) =>
        Wrapped.Lines($"{judged.Criterion.Name}: {Found(judged)}. {judged.Criterion.Source}", 66)
            .Select((line, i) => i == 0 ? $"  {word}  {line}" : $"           {line}");
}
