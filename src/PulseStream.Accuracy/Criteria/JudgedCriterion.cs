using PulseStream.Accuracy.Statistics;

namespace PulseStream.Accuracy.Criteria;

/// <summary>A criterion and how a study did.</summary>
/// <param name="Criterion">The criterion.</param>
/// <param name="Limit">Its limit for this study: a share of subjects has become a number.</param>
/// <param name="Value">What was found over its range; null where there was nothing to find it from.</param>
public sealed record JudgedCriterion(Criterion Criterion, double Limit, double? Value)
{
    /// <summary>Whether it is met; what is not known is not met.</summary>
    public bool IsMet => Value is { } value && (Criterion.IsLeast ? value >= Limit : value <= Limit);

    /// <summary>Judges a study.</summary>
    /// <param name="criterion">The criterion.</param>
    /// <param name="study">All pairs.</param>
    /// <returns>Null where the study does not tell what it would be judged on: other sites, no skin tone that it names.</returns>
    public static JudgedCriterion? Of(Criterion criterion, IReadOnlyCollection<PairedReading> study)
    {
        ArgumentNullException.ThrowIfNull(criterion);
        ArgumentNullException.ThrowIfNull(study);
        var sited = AtSites(criterion, study);
        if (sited.Length == 0 || !KnowsSkinTones(criterion, study))
        {
            return null;
        }

        PairedReading[] pairs = [.. sited.Where(pair => pair.Reference >= criterion.From && pair.Reference <= criterion.To)];
        var share = Math.Ceiling((criterion.LeastShare * SubjectsOf(study)) - 1e-9);
        return new(criterion, Math.Max(criterion.Limit, share), ValueOf(criterion, pairs));
    }

    // Where no pair says where the sensor sat, every site may be meant.
    private static PairedReading[] AtSites(Criterion criterion, IReadOnlyCollection<PairedReading> study) =>
        criterion.Sites.Count == 0 || study.All(pair => pair.Site is null)
            ? [.. study]
            : [.. study.Where(pair => pair.Site is { } site && criterion.Sites.Contains(site, StringComparer.OrdinalIgnoreCase))];

    private static bool KnowsSkinTones(Criterion criterion, IReadOnlyCollection<PairedReading> study) => criterion.Measure switch
    {
        CriterionMeasure.DarkSubjects => study.Any(pair => pair.SkinTone is { } tone
            && criterion.Groups.Concat(criterion.OtherGroups).Contains(tone, StringComparer.OrdinalIgnoreCase)),
        CriterionMeasure.GroupDifference => study.Select(pair => pair.SkinTone).OfType<string>().Distinct(StringComparer.Ordinal).Count() > 1,
        _ => true,
    };

    private static double? ValueOf(Criterion criterion, PairedReading[] pairs) => criterion.Measure switch
    {
        CriterionMeasure.Arms => Measures.Of(pairs).Arms,
        CriterionMeasure.Bias => Measures.Of(pairs).Bias is { } bias ? Math.Abs(bias) : null,
        CriterionMeasure.Precision => Measures.Of(pairs).Precision,
        CriterionMeasure.Pairs => pairs.Length,
        CriterionMeasure.Subjects => SubjectsOf(pairs),
        CriterionMeasure.DarkSubjects => SubjectsOf(pairs.Where(pair => pair.SkinTone is { } tone && criterion.Groups.Contains(tone, StringComparer.OrdinalIgnoreCase))),
        _ => GroupDifference.Of(SkinGroup.Of(pairs))?.Interval?.High,
    };

    private static int SubjectsOf(IEnumerable<PairedReading> pairs) => pairs.Select(pair => pair.Subject).Distinct(StringComparer.Ordinal).Count();
}
