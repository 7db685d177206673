using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Triage;

/// <summary>Published guidance expressed as policies; sources in tests/vectors/guidance/SOURCE.md.</summary>
public sealed class PublishedGuidanceTests
{
    public static TheoryData<string, double, string> Graded
    {
        get
        {
            var rows = new TheoryData<string, double, string>();
            foreach (var fields in Guidance.Bands)
            {
                rows.Add(fields[0], double.Parse(fields[1]), fields[3]);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Graded))]
    public void APolicyFileGradesAsItsSourceDoes(string policy, double percent, string level)
    {
        var advice = AdviceJudge.Judge(Guidance.Read(policy), Find.Spo2(percent));
        Assert.Equal(level, AdviceLevelName.Of(advice.Level));
        Assert.Equal(policy, advice.PolicyName);
    }

    [Theory]
    [InlineData("who-home-care-bundle", 89.999, AdviceLevel.Emergency)]
    [InlineData("who-home-care-bundle", 94.999, AdviceLevel.DoctorNow)]
    [InlineData("nhs-england-c0445", 92.999, AdviceLevel.DoctorNow)]
    [InlineData("nhs-england-c0445", 94.999, AdviceLevel.Call)]
    public void WholePercentBandsBecomeHalfOpenOnes(string policy, double percent, AdviceLevel level) =>
        Assert.Equal(level, AdviceJudge.Judge(Guidance.Read(policy), Find.Spo2(percent)).Level);

    [Fact]
    public void TheSameNumberIsGradedDifferentlySoThePolicyIsNamed()
    {
        // 94 %: urgent help (WHO), moderate (NHS England), a check within the hour (common practice).
        Advice[] advices = [.. Guidance.Policies.Append(Find.Policy).Select(policy => AdviceJudge.Judge(policy, Find.Spo2(94)))];
        Assert.Equal([AdviceLevel.DoctorNow, AdviceLevel.Call, AdviceLevel.Recheck], advices.Select(advice => advice.Level));
        Assert.All(advices, advice => Assert.EndsWith($"Policy followed: {advice.PolicyName}.", advice.Text, StringComparison.Ordinal));
    }
}
