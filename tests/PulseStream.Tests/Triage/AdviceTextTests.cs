using PulseStream.Readings;
using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Triage;

public sealed class AdviceTextTests
{
    // Calm reading aloud runs at about 170 words a minute (common practice): 25 seconds hold 70 words.
    private const int WordsInTwentyFiveSeconds = 70;

    private static readonly Feeling[] Feelings = Enum.GetValues<Feeling>();

    [Fact]
    public void UrgentWordsAreReadAloudInUnderTwentyFiveSeconds()
    {
        var texts = from percent in new[] { 97.0, 91, 88.4, 84.6, 62 }
                    from pulse in new double?[] { null, 72, 135 }
                    from feeling in Feelings
                    from low in new[] { percent, percent - 4 }
                    let advice = Find.Advice(Find.Spo2(percent, feeling) with { Spo2 = new Saturation(percent, low, percent), PulseRatePerMinute = pulse })
                    where advice.Level >= AdviceLevel.DoctorNow
                    select advice.Text;
        Assert.All(texts, text => Assert.InRange(text.Split(' ').Length, 1, WordsInTwentyFiveSeconds));
    }

    [Theory]
    [InlineData(84, "Ring your local emergency number now.")]
    [InlineData(88, "Call a doctor now. If no doctor answers at once, ring your local emergency number.")]
    [InlineData(92, "Measure again in 60 minutes.")]
    [InlineData(97, "These numbers ask for nothing now.")]
    public void TheActionComesFirst(double percent, string action) =>
        Assert.StartsWith(action, Find.Advice(Find.Spo2(percent)).Text, StringComparison.Ordinal);

    [Fact]
    public void FourHoursAreSaidAsHours() =>
        Assert.StartsWith("Measure again in 4 hours.", Find.Advice(Find.Spo2(97, Feeling.Poorly)).Text, StringComparison.Ordinal);

    [Theory]
    [InlineData(84)]
    [InlineData(88)]
    [InlineData(92)]
    [InlineData(97)]
    public void EveryAdviceEndsInTheCautionsThatFit(double percent)
    {
        var text = Find.Advice(Find.Spo2(percent, Feeling.NotAsked)).Text;
        Assert.Contains("No medical device, no diagnosis", text, StringComparison.Ordinal);
        Assert.Contains("Children, pregnancy, dark skin tone and carbon monoxide need a clinician's eye", text, StringComparison.Ordinal);
        Assert.Contains("local emergency number", percent < 85 || percent >= 90 ? text : text.Split("Sit upright")[0], StringComparison.Ordinal);
        Assert.EndsWith("Policy followed: adults-at-home-sea-level.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void AGoodNumberDoesNotRuleIllnessOut()
    {
        Assert.Contains("A good number does not rule illness out", Find.Advice(Find.Spo2(99)).Text, StringComparison.Ordinal);
        Assert.Contains("A good number does not rule illness out", Find.Advice(Find.Spo2(99, Feeling.Breathless)).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("good number", Find.Advice(Find.Spo2(80)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void APersonOnOxygenWithoutATargetIsSentToAskForOne()
    {
        var findings = Find.Spo2(97) with { Circumstances = new Circumstances { OnOxygen = true } };
        Assert.Contains("ask your doctor which range is right for you", Find.Advice(findings).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("which range", Find.Advice(Find.Target(90, 88, 92, onOxygen: true)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void PoorlyInsideATargetIsNotSentAway() =>
        Assert.Contains("if it gets worse, call a doctor", Find.Advice(Find.Target(90, 88, 92, feeling: Feeling.Poorly)).Text, StringComparison.Ordinal);

    [Theory]
    [InlineData(96, "Measure again now, to be sure: sit down")]
    [InlineData(92, "Measure again now: sit down, rest five minutes, warm the hand and keep it still. Then once more in 60 minutes.")]
    [InlineData(88, "Call a doctor now.")]
    public void ARepeatNowIsTheActionUnlessACallComesFirst(double percent, string action)
    {
        var text = Find.Advice(Find.Spo2(percent) with { IsUnsettled = true }).Text;
        Assert.StartsWith(action, text, StringComparison.Ordinal);
        Assert.Contains("easure again", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ARepeatBesideACallComesAfterIt() =>
        Assert.Contains("Measure again now: sit down", Find.Advice(Find.Spo2(92, Feeling.Poorly) with { IsUnsettled = true }).Text, StringComparison.Ordinal);
}
