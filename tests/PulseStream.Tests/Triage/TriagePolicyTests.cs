using System.Text;
using CsCheck;
using PulseStream.Samples;
using PulseStream.Triage;
using PulseStream.Triage.Policies;
using Xunit;

namespace PulseStream.Tests.Triage;

public sealed class TriagePolicyTests
{
    private const string Place = "hut.json";
    private static readonly string Json = ReadDefault();

    [Theory]
    [InlineData("\"level\": \"call\" }", "\"level\": \"call\", \"levle\": \"call\" }", "hut.json, bands[1].secondValue.levle: this member is unknown. Remove it or correct its name; known here: fromMinutes, toMinutes, level.")]
    [InlineData("\"audience\"", "\"audiense\"", "hut.json, audiense: this member is unknown.")]
    [InlineData(", \"severe\": \"emergency\"", "", "hut.json, symptoms.severe: this member is missing. Add it; the default policy shows how.")]
    [InlineData("\"from\": 90, \"to\": 95", "\"from\": 90, \"to\": 96", "hut.json, bands[1].to: the band overlaps the one above it: expected 95, found 96.")]
    [InlineData("\"from\": 90, \"to\": 95", "\"from\": 90, \"to\": 94", "hut.json, bands[1].to: there is a gap above the band: expected 95, found 94.")]
    [InlineData("\"from\": 90, \"to\": 95", "\"from\": 95, \"to\": 90", "hut.json, bands[1].from: the band is reversed or empty, from 95 to 90. Let 'from' be the smaller number.")]
    [InlineData("\"from\": 0, \"to\": 85", "\"from\": 1, \"to\": 85", "hut.json, bands[3].from: there is a gap below the last band: expected 0, found 1.")]
    [InlineData("\"from\": 95, \"to\": 100", "\"from\": 95, \"to\": 99", "hut.json, bands[0].to: there is a gap above the band: expected 100, found 99.")]
    [InlineData("\"from\": 95, \"to\": 100", "\"from\": 95, \"to\": 100.1", "hut.json, bands[0].to: expected a number from 0 to 100, found 100.1. Correct it and run again.")]
    [InlineData("\"from\": 0,", "\"from\": -1,", "hut.json, bands[3].from: expected a number from 0 to 100, found -1.")]
    [InlineData("\"from\": 0,", "\"from\": \"0\",", "hut.json, bands[3].from: expected a number from 0 to 100, found a text.")]
    [InlineData("\"from\": 0,", "\"from\": 1e999,", "hut.json, bands[3].from: expected a number from 0 to 100, found 1e999.")]
    [InlineData("\"from\": 0,", "\"from\": NaN,", "hut.json, line 19: this is not JSON from byte 15 of the line on.")]
    [InlineData("\"well\": \"emergency\"", "\"well\": \"urgent\"", "hut.json, bands[3].well: expected one of usual, recheck, call, doctor-now, emergency, found urgent. Write one of them in quotes.")]
    [InlineData("\"well\": \"emergency\"", "\"well\": 4", "hut.json, bands[3].well: expected one of usual, recheck, call, doctor-now, emergency, found 4.")]
    [InlineData("\"well\": \"doctor-now\"", "\"well\": \"usual\"", "hut.json, bands[2].well: a lower band is less urgent than the one above it: expected call or more, found usual.")]
    [InlineData("\"poorly\": \"call\"", "\"poorly\": \"usual\"", "hut.json, bands[1].poorly: expected recheck or more, as 'notAsked' says, found usual.")]
    [InlineData(", \"recheckAfterMinutes\": 240", "", "hut.json, bands[0].recheckAfterMinutes: this member is missing.")]
    [InlineData("\"recheckAfterMinutes\": 240", "\"recheckAfterMinutes\": 1.5", "hut.json, bands[0].recheckAfterMinutes: expected a whole number from 1 to 10080, found 1.5.")]
    [InlineData("\"well\": \"emergency\"", "\"recheckAfterMinutes\": 5, \"well\": \"emergency\"", "hut.json, bands[3].recheckAfterMinutes: minutes to a check, and no level here says recheck.")]
    [InlineData("\"fromMinutes\": 30, \"toMinutes\": 240", "\"fromMinutes\": 240, \"toMinutes\": 30", "hut.json, bands[1].secondValue.toMinutes: expected a whole number from 240 to 10080, found 30.")]
    [InlineData("\"breathless\": \"doctor-now\"", "\"breathless\": \"recheck\"", "hut.json, symptoms.breathless: recheck needs minutes, and this rule has none.")]
    [InlineData("\"severe\": \"emergency\"", "\"severe\": \"call\"", "hut.json, symptoms.severe: expected doctor-now or more, as 'breathless' says, found call.")]
    [InlineData("\"usualFrom\": 60", "\"usualFrom\": 30", "hut.json, pulse.usualFrom: expected a number from 40 to 300, found 30.")]
    [InlineData("\"limitTo\": 130", "\"limitTo\": 90", "hut.json, pulse.limitTo: expected a number from 100 to 300, found 90.")]
    [InlineData("\"below\": \"call\"", "\"below\": \"emergency\"", "hut.json, target.farBelow: expected emergency or more, as 'below' says, found doctor-now.")]
    [InlineData("\"emergencyBelow\": 85", "\"emergencyBelow\": null", "hut.json, target.emergencyBelow: expected a number from 0 to 100, found null.")]
    [InlineData("\"name\": \"adults-at-home-sea-level\"", "\"name\": \" \"", "hut.json, name: expected a text in quotes, not empty, found a text.")]
    [InlineData("\"source\"", "\"name\": \"twice\", \"source\"", "hut.json, name: this member stands twice in one object. Keep each member once.")]
    public void AWrongPolicyIsOneSentenceWithFileAndMember(string right, string wrong, string sentence)
    {
        Assert.Contains(right, Json, StringComparison.Ordinal);
        var at = Json.IndexOf(right, StringComparison.Ordinal);
        var json = string.Concat(Json.AsSpan(0, at), wrong, Json.AsSpan(at + right.Length));
        var e = Assert.Throws<BadInputException>(() => TriagePolicy.Parse(json, Place));
        Assert.StartsWith(sentence, e.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "hut.json, line 1: this is not JSON")]
    [InlineData("[]", "hut.json: expected an object with the members of a policy, found a list. Start from a copy of the default policy.")]
    [InlineData("{}", "hut.json, name: this member is missing.")]
    [InlineData("\n{ \"name\": \"x\" \"bands\" }", "hut.json, line 2: this is not JSON from")]
    public void WhatIsNoPolicyIsRefused(string json, string sentence) =>
        Assert.StartsWith(sentence, Assert.Throws<BadInputException>(() => TriagePolicy.Parse(json, Place)).Message, StringComparison.Ordinal);

    [Fact]
    public void BandsThatAreNoListOfObjectsAreRefused()
    {
        const string head = "{ \"name\": \"x\", \"audience\": \"x\", \"source\": \"x\", \"bands\": ";
        Assert.StartsWith("hut.json, bands: expected a list in [ ]", Assert.Throws<BadInputException>(() => TriagePolicy.Parse($"{head} [] }}", Place)).Message, StringComparison.Ordinal);
        Assert.StartsWith("hut.json, bands[0]: expected an object in { }, found 7.", Assert.Throws<BadInputException>(() => TriagePolicy.Parse($"{head} [7] }}", Place)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AMessageStaysOneShortLineWhateverTheFileHolds()
    {
        var json = Json.Replace("\"audience\"", $"\"{new string('x', 5000)}\\n\"", StringComparison.Ordinal);
        var message = Assert.Throws<BadInputException>(() => TriagePolicy.Parse(json, Place)).Message;
        Assert.DoesNotContain('\n', message);
        Assert.InRange(message.Length, 1, 300);
    }

    [Fact]
    public void CommentsTrailingCommasAndAByteOrderMarkAreAllowed()
    {
        var json = Json.Replace("\"emergencyBelow\": 85", "\"emergencyBelow\": 85, // as agreed", StringComparison.Ordinal);
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(json)];
        Assert.Equal(85, TriagePolicy.Parse(bytes, Place).Target.EmergencyBelowPercent);
    }

    [Fact]
    public void Utf16IsRefusedInOneSentence() =>
        Assert.StartsWith("hut.json: this is not UTF-8 text. Save it as UTF-8 and run again.", Assert.Throws<BadInputException>(() => TriagePolicy.Parse(Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(Json)).ToArray(), Place)).Message, StringComparison.Ordinal);

    [Fact]
    public void EveryDamagedFileIsAPolicyOrOneSentence() =>
        Gen.Select(Gen.Int[0, Encoding.UTF8.GetByteCount(Json) - 1], Gen.Byte, Gen.Int[0, 3]).Array[1, 4].Sample(damages =>
        {
            var bytes = Encoding.UTF8.GetBytes(Json).ToList();
            foreach (var (at, value, kind) in damages)
            {
                Damage(bytes, Math.Min(at, bytes.Count - 1), value, kind);
            }

            AssertPolicyOrSentence([.. bytes]);
        });

    [Fact]
    public void AnyBytesAreAPolicyOrOneSentence() => Gen.Byte.Array[0, 60].Sample(AssertPolicyOrSentence);

    [Fact]
    public void ALoneSurrogateInANameOrTextIsOneSentence()
    {
        const string sentence = @"hut.json: a text holds half a character, such as \ud800. Write the character itself, in UTF-8.";
        Assert.All(["\"audience\"", "\"Common practice\""], text =>
        {
            var json = Json.Replace(text, @"""\ud800""", StringComparison.Ordinal);
            Assert.Equal(sentence, Assert.Throws<BadInputException>(() => TriagePolicy.Parse(json, Place)).Message);
        });
    }

    [Fact]
    public void TheDefaultSaysWhomItIsForAndWhereItComesFrom()
    {
        Assert.Equal("adults-at-home-sea-level", Find.Policy.Name);
        Assert.Equal("Common practice", Find.Policy.Source);
        Assert.Contains("sea level", Find.Policy.Audience, StringComparison.Ordinal);
        Assert.Equal(4, Find.Policy.Bands.Count);
    }

    [Fact]
    public void EveryLevelHasANameThatReadsBack() => Assert.All(Enum.GetValues<AdviceLevel>(), level =>
        Assert.True(AdviceLevelName.TryParse(AdviceLevelName.Of(level), out var back) && back == level));

    private static void AssertPolicyOrSentence(byte[] bytes)
    {
        try
        {
            TriagePolicy.Parse(bytes, Place);
        }
        catch (BadInputException e)
        {
            Assert.StartsWith(Place, e.Message, StringComparison.Ordinal);
            Assert.DoesNotContain('\n', e.Message);
        }
    }

    private static void Damage(List<byte> bytes, int at, byte value, int kind)
    {
        switch (kind)
        {
            case 0: bytes[at] = value; break;
            case 1: bytes.Insert(at, value); break;
            case 2: bytes.RemoveAt(at); break;
            default: bytes.RemoveRange(at, Math.Min(value, bytes.Count - at - 1)); break;
        }
    }

    private static string ReadDefault()
    {
        using var stream = typeof(TriagePolicy).Assembly.GetManifestResourceStream("adults-at-home-sea-level.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
