using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Statistics;

namespace PulseStream.Accuracy;

/// <summary>What a reader of a statement should know before believing it.</summary>
internal static class StudyWarnings
{
    // Right columns pass for swapped ones in a study out of a hundred, since both lines have to say so.
    private const double ClearErrors = 2;

    public static IEnumerable<string> Of(IReadOnlyList<PairedReading> pairs, IReadOnlyList<Criterion> criteria)
    {
        if (MayBeSwapped(pairs))
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

    // What scatters around what: a device's error does not depend on the truth, but it does on its own reading. Whole
    // numbers, as a display shows, beside decimals, as a laboratory gives, say it too.
    private static bool MayBeSwapped(IReadOnlyList<PairedReading> pairs)
    {
        var isReferenceWhole = pairs.All(pair => pair.Reference == Math.Round(pair.Reference));
        var isReadingWhole = pairs.All(pair => pair.Reading == Math.Round(pair.Reading));
        if (isReferenceWhole != isReadingWhole)
        {
            return isReferenceWhole && SaysSpread(pairs);
        }

        return SaysSpread(pairs);
    }

    private static bool SaysSpread(IReadOnlyList<PairedReading> pairs)
    {
        var onReference = InErrors(ErrorRegression.Of(pairs, pair => pair.Reference));
        var onReading = InErrors(ErrorRegression.Of(pairs, pair => pair.Reading));
        return onReference < -ClearErrors && Math.Abs(onReading) < ClearErrors;
    }

    private static double InErrors(ErrorRegression? line) => line is { SlopeError: > 0 and var error } ? line.Slope / error : 0;

    private static bool HasSeveralTones(IEnumerable<PairedReading> pairs) =>
        pairs.Select(pair => pair.SkinTone).OfType<string>().Distinct(StringComparer.Ordinal).Count() > 1;
}
