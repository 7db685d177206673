using PulseStream.Accuracy;
using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Statistics;

namespace PulseStream.Cli.Output.Bench;

/// <summary>A statement of accuracy as one JSON object.</summary>
internal static class AccuracyJson
{
    public static void Print(Stream output, AccuracyStatement statement, Action<JsonLine> addMore)
    {
        using var line = new JsonLine(output, "accuracy");
        line.Text("quantity", QuantityScale.Of(statement.Quantity).Name)
            .Whole("n", statement.All.Count).Whole("subjects", statement.All.Subjects)
            .Number("bias", statement.All.Bias).Ends("bias", statement.BiasInterval)
            .Number("precision", statement.All.Precision).Ends("precision", statement.PrecisionInterval)
            .Number("arms", statement.All.Arms).Ends("arms", statement.ArmsInterval)
            .Number("loaLow", statement.Limits?.Low).Number("loaHigh", statement.Limits?.High)
            .Ends("loaLow", statement.Limits?.LowInterval).Ends("loaHigh", statement.Limits?.HighInterval)
            .Number("withinVariance", statement.Limits?.WithinVariance).Number("betweenVariance", statement.Limits?.BetweenVariance)
            .Number("slope", statement.Regression?.Slope).Ends("slope", statement.Regression?.SlopeInterval).Number("intercept", statement.Regression?.Intercept)
            .List("bands", statement.Bands, Band)
            .List("groups", statement.Groups, Group);
        if (statement.LargestDifference is { } largest)
        {
            line.Object("groupDifference", inner => inner.Text("higher", largest.Higher).Text("lower", largest.Lower)
                .Number("difference", largest.Difference).Ends("difference", largest.Interval));
        }

        line.List("criteria", statement.Criteria, Criterion).List("notInForce", statement.NotInForce, Criterion).Texts("warnings", statement.Warnings);
        addMore(line);
    }

    private static JsonLine Measured(JsonLine line, Measures measures) => line
        .Whole("n", measures.Count).Whole("subjects", measures.Subjects)
        .Number("bias", measures.Bias).Number("precision", measures.Precision).Number("arms", measures.Arms);

    private static void Band(JsonLine line, Band band) =>
        Measured(line.Number("from", band.From).Number("to", band.To), band.Measures).Ends("arms", band.ArmsInterval);

    private static void Group(JsonLine line, SkinGroup group) =>
        Measured(line.Text("name", group.Name).Text("skin_tone", group.Name), group.Measures).Ends("bias", group.BiasInterval).Ends("arms", group.ArmsInterval);

    private static void Criterion(JsonLine line, JudgedCriterion judged) => line
        .Text("name", judged.Criterion.Name).Number("limit", judged.Limit).Number("value", judged.Value)
        .Flag("met", judged.IsMet).Text("source", judged.Criterion.Source)
        .Number("from", judged.Criterion.From).Number("to", judged.Criterion.To);
}
