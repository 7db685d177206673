using PulseStream.Accuracy.Criteria;

namespace PulseStream.Accuracy;

/// <summary>What a reader of a statement should know before believing it.</summary>
internal static class StudyWarnings
{
    public static IEnumerable<string> Of(IReadOnlyList<PairedReading> pairs, Quantity quantity, IReadOnlyList<Criterion> criteria)
    {
        if (ColumnOrder.MayBeSwapped(pairs, QuantityScale.Of(quantity).Highest))
        {
            yield return "The columns 'reference' and 'reading' may be swapped: the scatter belongs to 'reference', as a device's would. Check which instrument is which.";
        }

        if (pairs.GroupBy(pair => pair.Subject, StringComparer.Ordinal).FirstOrDefault(HasSeveralTones) is { } subject)
        {
            yield return $"Subject '{subject.Key}' has more than one skin tone: the groups are compared as if they shared nobody.";
        }

        if (pairs.Select(pair => pair.Device).OfType<string>().Distinct(StringComparer.Ordinal).Count() is > 1 and var devices)
        {
            yield return $"The pairs are of {devices} devices: the statement is about all of them together.";
        }

        foreach (var criterion in criteria.Where(c => c is { InForce: true, Measure: CriterionMeasure.DarkSubjects }))
        {
            if (JudgedCriterion.Of(criterion, pairs) is null)
            {
                yield return pairs.All(pair => pair.SkinTone is null)
                    ? $"No column 'skin_tone': '{criterion.Name}' could not be judged."
                    : $"None of the skin tones is one that '{criterion.Name}' names: it could not be judged. Name them in a file of criteria.";
            }
        }
    }

    private static bool HasSeveralTones(IEnumerable<PairedReading> pairs) =>
        pairs.Select(pair => pair.SkinTone).OfType<string>().Distinct(StringComparer.Ordinal).Count() > 1;
}
