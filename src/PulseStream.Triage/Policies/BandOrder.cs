using PulseStream.Samples;

namespace PulseStream.Triage.Policies;

/// <summary>Checks that bands run from 100 down to 0, each meeting the one above, and that urgency never falls with the saturation.</summary>
internal static class BandOrder
{
    /// <summary>Checks one band against the one listed before it.</summary>
    /// <exception cref="BadInputException">The band is reversed, overlaps, leaves a gap, or is less urgent than the one above.</exception>
    public static void Check(IReadOnlyList<PolicyObject> elements, IReadOnlyList<PolicyBand> bands, int i)
    {
        CheckEnds(elements[i], bands[i], i == 0 ? null : bands[i - 1], isLast: i == bands.Count - 1);
        if (i > 0)
        {
            CheckUrgency(elements[i], bands[i], bands[i - 1]);
        }
    }

    private static void CheckEnds(PolicyObject element, PolicyBand band, PolicyBand? above, bool isLast)
    {
        if (!(band.FromPercent < band.ToPercent))
        {
            throw element.Wrong("from", $"the band is reversed or empty, from {band.FromPercent} to {band.ToPercent}", "Let 'from' be the smaller number");
        }

        var end = above?.FromPercent ?? 100;
        if (band.ToPercent != end)
        {
            var what = band.ToPercent > end ? "the band overlaps the one above it" : "there is a gap above the band";
            throw element.Wrong("to", $"{what}: expected {end}, found {band.ToPercent}", "List the bands from 100 down to 0, each ending where the one above begins");
        }

        if (isLast && band.FromPercent != 0)
        {
            throw element.Wrong("from", $"there is a gap below the last band: expected 0, found {band.FromPercent}", "List the bands from 100 down to 0");
        }
    }

    private static void CheckUrgency(PolicyObject element, PolicyBand band, PolicyBand above)
    {
        // A second value raises everyone in the band above, so what lies below may not be milder than that either.
        var second = above.SecondValue?.Level ?? AdviceLevel.Usual;
        CheckUrgency(element, "well", band.WhenWell, MoreUrgent(above.WhenWell, second));
        CheckUrgency(element, "notAsked", band.WhenNotAsked, MoreUrgent(above.WhenNotAsked, second));
        CheckUrgency(element, "poorly", band.WhenPoorly, MoreUrgent(above.WhenPoorly, second));
    }

    private static void CheckUrgency(PolicyObject element, string member, AdviceLevel level, AdviceLevel above)
    {
        if (level < above)
        {
            throw element.Wrong(member, $"a lower band is less urgent than the one above it: expected {AdviceLevelName.Of(above)} or more, found {AdviceLevelName.Of(level)}", "Let urgency never fall with the saturation");
        }
    }

    private static AdviceLevel MoreUrgent(AdviceLevel a, AdviceLevel b) => a > b ? a : b;
}
