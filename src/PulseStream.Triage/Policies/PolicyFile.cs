using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Triage.Policies;

/// <summary>Reads a policy file member by member.</summary>
internal static class PolicyFile
{
    // Beyond these no pulse of a person lies; a limit outside them is a slip of the pen.
    private const double LargestPulseRatePerMinute = 300;
    private const int MinutesOfAWeek = 7 * 24 * 60;

    public static TriagePolicy Parse(ReadOnlyMemory<byte> utf8Json, string place) =>
        StrictJson.Read(utf8Json, place, root => Read(root, place));

    private static TriagePolicy Read(JsonElement policy, string place)
    {
        if (policy.ValueKind != JsonValueKind.Object)
        {
            throw new BadInputException(place, $"expected an object with the members of a policy, found {JsonMembers.Describe(policy)}", "Start from a copy of the default policy");
        }

        var root = new PolicyObject(place, "", policy);
        root.AllowOnly("name", "audience", "source", "bands", "symptoms", "pulse", "target", "noReading");
        return new TriagePolicy(root.Text("name"), root.Text("audience"), root.Text("source"), ReadBands(root))
        {
            Symptoms = ReadSymptoms(root.Object("symptoms")),
            Pulse = ReadPulse(root.Object("pulse")),
            Target = ReadTarget(root.Object("target")),
            NoReading = ReadNoReading(root.Object("noReading")),
            Json = JsonSerializer.Serialize(policy),
        };
    }

    private static PolicyBand[] ReadBands(PolicyObject root)
    {
        var elements = root.List("bands");
        var bands = elements.Select(ReadBand).ToArray();
        for (var i = 0; i < bands.Length; i++)
        {
            BandOrder.Check(elements, bands, i);
        }

        return bands;
    }

    private static PolicyBand ReadBand(PolicyObject band)
    {
        band.AllowOnly("from", "to", "well", "notAsked", "poorly", "recheckAfterMinutes", "secondValue");
        var (well, notAsked, poorly) = (band.Level("well"), band.Level("notAsked"), band.Level("poorly"));
        band.NeverFalls(("well", well), ("notAsked", notAsked), ("poorly", poorly));
        var saysRecheck = well == AdviceLevel.Recheck || notAsked == AdviceLevel.Recheck || poorly == AdviceLevel.Recheck;
        return new PolicyBand(
            band.Number("from", 0, 100),
            band.Number("to", 0, 100),
            well,
            notAsked,
            poorly,
            band.MinutesWhere(saysRecheck, "recheckAfterMinutes", 1, MinutesOfAWeek),
            band.Has("secondValue") ? ReadSecondValue(band.Object("secondValue")) : null);
    }

    private static SecondValueRule ReadSecondValue(PolicyObject rule)
    {
        rule.AllowOnly("fromMinutes", "toMinutes", "level");
        var from = rule.Whole("fromMinutes", 1, MinutesOfAWeek);
        return new SecondValueRule(from, rule.Whole("toMinutes", from, MinutesOfAWeek), rule.LevelWithoutMinutes("level"));
    }

    private static SymptomLevels ReadSymptoms(PolicyObject symptoms)
    {
        symptoms.AllowOnly("breathless", "severe");
        var levels = new SymptomLevels(symptoms.LevelWithoutMinutes("breathless"), symptoms.LevelWithoutMinutes("severe"));
        symptoms.NeverFalls(("breathless", levels.Breathless), ("severe", levels.Severe));
        return levels;
    }

    private static PulseLimits ReadPulse(PolicyObject pulse)
    {
        pulse.AllowOnly("usualFrom", "usualTo", "limitFrom", "limitTo", "outsideLimits");
        var limitFrom = pulse.Number("limitFrom", 0, LargestPulseRatePerMinute);
        var usualFrom = pulse.Number("usualFrom", limitFrom, LargestPulseRatePerMinute);
        var usualTo = pulse.Number("usualTo", usualFrom, LargestPulseRatePerMinute);
        var limitTo = pulse.Number("limitTo", usualTo, LargestPulseRatePerMinute);
        return new PulseLimits(usualFrom, usualTo, limitFrom, limitTo, pulse.LevelWithoutMinutes("outsideLimits"));
    }

    private static TargetLevels ReadTarget(PolicyObject target)
    {
        target.AllowOnly("inside", "below", "farBelow", "farBelowPoints", "above", "aboveOnOxygen", "emergencyBelow");
        var levels = new TargetLevels(
            target.LevelWithoutMinutes("inside"),
            target.LevelWithoutMinutes("below"),
            target.LevelWithoutMinutes("farBelow"),
            target.Number("farBelowPoints", 0, 100),
            target.LevelWithoutMinutes("above"),
            target.LevelWithoutMinutes("aboveOnOxygen"),
            target.Number("emergencyBelow", 0, 100));
        target.NeverFalls(("inside", levels.Inside), ("below", levels.Below), ("farBelow", levels.FarBelow));
        target.NeverFalls(("inside", levels.Inside), ("above", levels.Above), ("aboveOnOxygen", levels.AboveOnOxygen));
        return levels;
    }

    private static NoReadingRule ReadNoReading(PolicyObject rule)
    {
        rule.AllowOnly("level", "recheckAfterMinutes");
        var level = rule.Level("level");
        return new NoReadingRule(level, rule.MinutesWhere(level == AdviceLevel.Recheck, "recheckAfterMinutes", 0, MinutesOfAWeek));
    }
}
