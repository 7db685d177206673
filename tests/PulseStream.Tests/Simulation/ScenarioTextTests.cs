using CsCheck;
using PulseStream.Samples;
using PulseStream.Simulation;
using PulseStream.Simulation.Episodes;
using Xunit;

namespace PulseStream.Tests.Simulation;

public sealed class ScenarioTextTests
{
    [Theory]
    [InlineData("97", 0, 97)]
    [InlineData("97", 1000, 97)]
    [InlineData("97@0,88@60,88@120", 30, 92.5)]
    [InlineData("97@0,88@60,88@120", 90, 88)]
    [InlineData("97@0,88@60,88@120", 500, 88)]
    [InlineData("97,step 88@60", 59.99, 97)]
    [InlineData("97,step 88@60", 60, 88)]
    [InlineData("97, step 88@60, 92@80", 70, 90)]
    [InlineData("97@10,88@20", 3, 97)]
    public void TracksAreReadAsWritten(string text, double seconds, double value) =>
        Assert.Equal(value, ScenarioText.ParseTrack("--spo2", text).At(seconds), 1e-9);

    [Theory]
    [InlineData("")]
    [InlineData("ninety")]
    [InlineData("97,88")]
    [InlineData("97@60,88@30")]
    [InlineData("step 97@0")]
    [InlineData("97@1@2")]
    [InlineData("NaN")]
    public void ATrackThatIsNoneIsRefusedInASentence(string text)
    {
        var refusal = Assert.Throws<BadInputException>(() => ScenarioText.ParseTrack("--spo2", text));
        Assert.StartsWith("--spo2: expected ", refusal.Message);
    }

    [Fact]
    public void AnEpisodeIsReadWithItsKeys() => Assert.Equal(
        new MotionEpisode(20, 30, MotionKind.Rhythmic, Size: 3, Hz: 1.4),
        ScenarioText.ParseEpisode("motion:20-30:size=3,kind=rhythmic,hz=1.4"));

    [Theory]
    [InlineData("motion", MotionKind.Broadband)]
    public void AnEpisodeCanLastAllAlong(string kind, MotionKind expected) => Assert.Equal(
        new MotionEpisode(double.NegativeInfinity, double.PositiveInfinity, expected),
        ScenarioText.ParseEpisode($"{kind}:all"));

    [Theory]
    [InlineData("off:1-2")]
    [InlineData("half-off:1-2")]
    [InlineData("slip:1-2")]
    [InlineData("lifeless:1-2")]
    [InlineData("venous:1-2")]
    [InlineData("ambient:1-2")]
    [InlineData("flicker:1-2")]
    [InlineData("clip:1-2")]
    [InlineData("gap:1-2")]
    public void AnEpisodeWithoutKeysHasTheDefaultsOfItsType(string text)
    {
        var episode = ScenarioText.ParseEpisode(text);
        Assert.Equal(Activator.CreateInstance(episode.GetType(), WithDefaults(episode.GetType())), episode);
    }

    [Theory]
    [InlineData("motion")]
    [InlineData("quake:1-2")]
    [InlineData("motion:2-1")]
    [InlineData("motion:1-2:sise=3")]
    [InlineData("motion:1-2:size=big")]
    [InlineData("motion:1-2:size=-1")]
    [InlineData("motion:1-2:kind=wild")]
    [InlineData("motion:1-2:kind=1")]
    [InlineData("motion:1-2:size=1,size=2")]
    [InlineData("gap:all:x=1")]
    public void AnEpisodeThatIsNoneIsRefusedInASentence(string text)
    {
        var refusal = Assert.Throws<BadInputException>(() => ScenarioText.ParseEpisode(text));
        Assert.StartsWith($"--episode {text}: ", refusal.Message);
    }

    [Fact]
    public void AnyTextIsReadOrRefused() => Gen.OneOf(Gen.String, Gen.String[Gen.Char["motionff:-=,0123.ste @"], 0, 30]).Sample(text =>
    {
        try
        {
            ScenarioText.ParseEpisode(text);
            ScenarioText.ParseTrack("--spo2", text);
        }
        catch (BadInputException)
        {
            return;
        }
    });

    [Fact]
    public void ValuesOutsideTheirLimitsAreRefusedByOption()
    {
        Assert.StartsWith("--rate: ", Assert.Throws<BadInputException>(() => new Scenario { RateHz = 10 }).Message);
        Assert.StartsWith("--noise: ", Assert.Throws<BadInputException>(() => new Scenario { Noise = double.NaN }).Message);
        Assert.StartsWith("--spo2: ", Assert.Throws<BadInputException>(() => new Scenario { Spo2 = ScenarioText.ParseTrack("--spo2", "97,40@9") }).Message);
        Assert.StartsWith("--rhythm: ", Assert.Throws<BadInputException>(() => ScenarioText.ParseRhythm("waltz")).Message);
        Assert.StartsWith("--extinction: ", Assert.Throws<BadInputException>(() => ScenarioText.ParseRatio("800")).Message);
    }

    private static object?[] WithDefaults(Type type) =>
        [.. type.GetConstructors().Single(c => c.GetParameters().Length >= 2).GetParameters()
            .Select(p => p.HasDefaultValue ? p.DefaultValue : p.Name == "FromSeconds" ? 1.0 : 2.0)];
}
