using CsCheck;
using PulseStream.Readings;
using PulseStream.Triage;
using PulseStream.Triage.Policies;
using Xunit;

namespace PulseStream.Tests.Triage;

public sealed class AdvicePropertyTests
{
    private static readonly Gen<Feeling> Feelings = Gen.Enum<Feeling>();

    private static readonly Gen<TargetRange> Targets =
        Gen.Select(Gen.Double[0, 99], Gen.Double[0.001, 1], (low, share) => new TargetRange(low, low + (share * (100 - low))));

    private static readonly Gen<Saturation> Saturations =
        Gen.Double[0, 100].Array[3].Select(three => three.Order().ToArray()).Select(three => new Saturation(three[1], three[0], three[2]));

    private static readonly Gen<Circumstances> People = Gen.Select(Feelings, Targets.Null(), Gen.Bool, Gen.Double[0, 100].Nullable(), (feeling, target, onOxygen, arms) =>
        new Circumstances { Feeling = feeling, Target = target, OnOxygen = onOxygen, DeviceArmsPercent = arms });

    private static readonly Gen<EarlierReading[]> Histories =
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 400], (percent, minutes) => new EarlierReading(percent, minutes)).Array[0, 5];

    private static readonly Gen<Findings> AnyFindings = Gen.Select(Saturations.Nullable(), Gen.Double[0, 400].Nullable(), People, Histories, Gen.Bool, (spo2, pulse, person, earlier, isUnsettled) =>
        new Findings { Spo2 = spo2, PulseRatePerMinute = pulse, Circumstances = person, Earlier = earlier, IsUnsettled = isUnsettled });

    private static readonly Gen<TriagePolicy> Policies = Gen.Int[0, 2].Select(i => i == 0 ? Find.Policy : Guidance.Policies[i - 1]);

    [Fact]
    public void AnyFindingsGiveACompleteAdvice() => Gen.Select(Policies, AnyFindings).Sample((policy, findings) =>
    {
        var advice = AdviceJudge.Judge(policy, findings);
        return advice.Because.Count > 0
            && advice.Text.EndsWith($"Policy followed: {policy.Name}.", StringComparison.Ordinal)
            && (advice.RecheckAfterMinutes is not null) == (advice.Level == AdviceLevel.Recheck);
    });

    [Fact]
    public void TheLevelNeverFallsWhenTheSaturationFalls() => Gen.Select(Policies, AnyFindings, Gen.Double[0, 100], Gen.Double[0, 100]).Sample((policy, findings, a, b) =>
    {
        var person = findings.Circumstances with { Target = null };
        var high = findings with { Spo2 = new Saturation(Math.Max(a, b), 0, 100), Circumstances = person };
        var low = high with { Spo2 = new Saturation(Math.Min(a, b), 0, 100) };
        return AdviceJudge.Judge(policy, low).Level >= AdviceJudge.Judge(policy, high).Level;
    });

    [Fact]
    public void AWorseFeelingNeverLowersTheLevel() => Gen.Select(Policies, AnyFindings).Sample((policy, findings) =>
    {
        Feeling[] worsening = [Feeling.Well, Feeling.NotAsked, Feeling.Poorly, Feeling.Breathless, Feeling.Severe];
        var levels = worsening.Select(feeling => AdviceJudge.Judge(policy, findings with { Circumstances = findings.Circumstances with { Feeling = feeling } }).Level).ToArray();
        return levels.SequenceEqual(levels.Order());
    });

    [Fact]
    public void TheOrderOfEarlierReadingsDoesNotMatter() => AnyFindings.Sample(findings =>
    {
        var turned = findings with { Earlier = [.. findings.Earlier.Reverse()] };
        return Find.Advice(findings).Because.SequenceEqual(Find.Advice(turned).Because, StringComparer.Ordinal);
    });

    [Fact]
    public void TheMostSevereOfCombinedRulesWins() => AnyFindings.Sample(findings =>
    {
        // Every rule that fired names its level last, or is one that only speaks.
        var advice = Find.Advice(findings);
        var named = advice.Because
            .Where(because => !because.StartsWith("Interval", StringComparison.Ordinal))
            .Select(because => because.Split(": ")[^1])
            .Select(name => AdviceLevelName.TryParse(name, out var level) ? level : AdviceLevel.Usual);
        return named.Max() == advice.Level;
    });

    [Fact]
    public void WithinASittingAnUrgentLevelIsNeverTakenBack() => Gen.Double[70, 100].Array[1, 8].Sample(percents =>
    {
        var triage = new SittingTriage(Find.Policy, new Circumstances(), []);
        var readings = percents.Select((percent, i) => Find.Reading((i + 1) * 10, percent)).ToArray();
        var advices = readings.Select(triage.Follow).OfType<Advice>().ToArray();
        var lowest = readings.MinBy(reading => reading.Spo2.Percent)!;
        var highest = readings.MaxBy(reading => reading.Spo2.Percent)!;
        var end = triage.Close(Find.Accepted(readings.Length * 10 + 10, highest, lowest));
        var worst = Find.Advice(Find.Spo2(lowest.Spo2.Percent)).Level;
        return advices.Select(advice => advice.Level).SequenceEqual(advices.Select(advice => advice.Level).Distinct().Order())
            && (worst < AdviceLevel.DoctorNow || end.Level == worst);
    });
}
