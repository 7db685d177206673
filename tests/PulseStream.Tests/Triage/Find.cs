using PulseStream.Readings;
using PulseStream.Triage;
using PulseStream.Triage.Policies;

namespace PulseStream.Tests.Triage;

/// <summary>Short ways to findings, readings, sittings and their advice under the default policy.</summary>
internal static class Find
{
    public static readonly TriagePolicy Policy = TriagePolicy.AdultsAtHomeSeaLevel;

    public static Findings Spo2(double percent, Feeling feeling = Feeling.Well) => new()
    {
        Spo2 = new Saturation(percent, percent, percent),
        Circumstances = new Circumstances { Feeling = feeling },
    };

    public static Findings Target(double percent, double low, double high, bool onOxygen = false, Feeling feeling = Feeling.Well) =>
        Spo2(percent) with { Circumstances = new Circumstances { Feeling = feeling, Target = new TargetRange(low, high), OnOxygen = onOxygen } };

    public static Advice Advice(Findings findings) => AdviceJudge.Judge(Policy, findings);

    public static Reading Reading(long second, double percent, int? pulse = 72) =>
        new(second, (int)Math.Round(percent), new Saturation(percent, percent, percent), pulse, 2.0, 5, Reasons.None);

    public static Sitting Accepted(long to, Reading record, Reading? lowest = null) =>
        new(to - 70, to, SittingOutcome.Accepted, record, lowest ?? record, null, 2, Reasons.Settling);

    public static Sitting Unsettled(long to, Reading lowest) =>
        new(to - 70, to, SittingOutcome.Unsettled, null, lowest, null, 2, Reasons.Settling);

    public static Sitting WithoutReading(long to, int? pulse = null) =>
        new(to - 70, to, SittingOutcome.None, null, null, pulse, 0, Reasons.Motion);

    public static bool Speaks(this Advice advice, string firstWord) =>
        advice.Because.Any(because => string.Equals(because.Split(' ')[0], firstWord, StringComparison.Ordinal));
}
