using System.CommandLine;
using PulseStream.Simulation;
using PulseStream.Simulation.Tracks;

namespace PulseStream.Cli.Options;

/// <summary>The options of `simulate`, one for each property of a scenario, which checks its own limits.</summary>
internal sealed class ScenarioOptions
{
    private readonly Dictionary<string, Option<string?>> _texts = new(StringComparer.Ordinal);
    private readonly Option<string[]> _episodes = new("--episode")
    {
        HelpName = "KIND:FROM-TO[:NAME=VALUE,..]",
        Description = "what happens for a while, repeatable: motion:20-30:size=3, off:40-50, slip, half-off, lifeless, venous, ambient, flicker, clip, gap",
        AllowMultipleArgumentsPerToken = false,
    };

    private readonly Option<bool> _ambient = new("--ambient") { Description = "write the light while the emitters are dark" };
    private readonly Option<bool> _acceleration = new("--acceleration") { Description = "write acceleration that follows the motion" };

    public ScenarioOptions()
    {
        Declare("--seconds", "N", "length (60)");
        Declare("--rate", "HZ", "sample rate (100)");
        Declare("--rate-off", "PERCENT", "by how much the true rate exceeds the stated one (0)");
        Declare("--seed", "N", "the same seed gives the same recording (1)");
        Declare("--bits", "N", "of the converter (18)");
        Declare("--spo2", "TRACK", "saturation over time, such as 97,88@60 or 97,step 88@60 (97)");
        Declare("--pulse", "TRACK", "pulse over time, /min (72)");
        Declare("--perfusion", "TRACK", "perfusion over time, percent (2)");
        Declare("--rhythm", "WORD", "regular, respiratory, irregular, ectopic or bigeminy (regular)");
        Declare("--irregularity", "PERCENT", "half width of an irregular rhythm's spread (25)");
        Declare("--beat-variation", "PERCENT", "deviation of the interval, beat by beat (1)");
        Declare("--second-wave", "SHARE", "height of the second wave over the first (0.2)");
        Declare("--respiration", "PERCENT", "of the light, peak to trough (0.2)");
        Declare("--respiration-rate", "N", "breaths a minute (15)");
        Declare("--baseline", "PERCENT", "slow course of the light (0.5)");
        Declare("--noise", "SHARE", "deviation of white noise over the light (2e-5)");
        Declare("--extinction", "WORD", "how saturation becomes R: line or 660/940 (line)");
        Declare("--missing", "SHARE", "samples lost one by one (0)");
        Declare("--repeats", "SHARE", "rows written twice (0)");
        Declare("--counter-bits", "N", "width at which the counter wraps (62)");
    }

    public void AddTo(Command command)
    {
        foreach (var option in _texts.Values)
        {
            command.Add(option);
        }

        command.Add(_episodes);
        command.Add(_ambient);
        command.Add(_acceleration);
    }

    /// <summary>The scenario that was asked for.</summary>
    /// <param name="parsed">The options.</param>
    /// <param name="usualRateHz">Sample rate where none is told; null for the scenario's own.</param>
    public Scenario ScenarioOf(ParseResult parsed, double? usualRateHz = null)
    {
        var usual = new Scenario();
        return new Scenario
        {
            DurationSeconds = Number(parsed, "--seconds", usual.DurationSeconds),
            RateHz = Number(parsed, "--rate", usualRateHz ?? usual.RateHz),
            RateOffPercent = Number(parsed, "--rate-off", usual.RateOffPercent),
            Seed = (ulong)Whole(parsed, "--seed", (long)usual.Seed),
            Bits = (int)Whole(parsed, "--bits", usual.Bits),
            Spo2 = TrackOf(parsed, "--spo2", usual.Spo2),
            Pulse = TrackOf(parsed, "--pulse", usual.Pulse),
            Perfusion = TrackOf(parsed, "--perfusion", usual.Perfusion),
            Rhythm = parsed.GetValue(_texts["--rhythm"]) is { } rhythm ? ScenarioText.ParseRhythm(rhythm) : usual.Rhythm,
            IrregularityPercent = Number(parsed, "--irregularity", usual.IrregularityPercent),
            BeatVariationPercent = Number(parsed, "--beat-variation", usual.BeatVariationPercent),
            SecondWave = Number(parsed, "--second-wave", usual.SecondWave),
            RespirationPercent = Number(parsed, "--respiration", usual.RespirationPercent),
            RespirationPerMinute = Number(parsed, "--respiration-rate", usual.RespirationPerMinute),
            BaselinePercent = Number(parsed, "--baseline", usual.BaselinePercent),
            Noise = Number(parsed, "--noise", usual.Noise),
            Ratio = parsed.GetValue(_texts["--extinction"]) is { } ratio ? ScenarioText.ParseRatio(ratio) : usual.Ratio,
            Episodes = [.. (parsed.GetValue(_episodes) ?? []).Select(ScenarioText.ParseEpisode)],
            WithAmbientColumn = parsed.GetValue(_ambient),
            WithAcceleration = parsed.GetValue(_acceleration),
            MissingShare = Number(parsed, "--missing", usual.MissingShare),
            RepeatShare = Number(parsed, "--repeats", usual.RepeatShare),
            CounterBits = (int)Whole(parsed, "--counter-bits", usual.CounterBits),
        };
    }

    private void Declare(string name, string helpName, string description) =>
        _texts.Add(name, new Option<string?>(name) { HelpName = helpName, Description = description });

    // The scenario knows the limits of each number.
    private double Number(ParseResult parsed, string name, double usual) =>
        OptionText.Number(name, parsed.GetValue(_texts[name]), double.MinValue, double.MaxValue) ?? usual;

    private long Whole(ParseResult parsed, string name, long usual) =>
        OptionText.Whole(name, parsed.GetValue(_texts[name]), 0, int.MaxValue) ?? usual;

    private Track TrackOf(ParseResult parsed, string name, Track usual) =>
        parsed.GetValue(_texts[name]) is { } text ? ScenarioText.ParseTrack(name, text) : usual;
}
