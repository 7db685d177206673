using System.CommandLine;
using PulseStream.Simulation;

namespace PulseStream.Cli.Commands;

/// <summary>The options of `simulate`: one for each property of a <see cref="Scenario"/>, which checks them.</summary>
internal sealed class ScenarioOptions
{
    private readonly List<(Option Option, Func<ParseResult, Scenario, Scenario> Apply)> entries = [];

    public ScenarioOptions()
    {
        Number("--seconds", "length, s (60)", (s, x) => s with { DurationSeconds = x });
        Number("--rate", "sample rate, 25 to 1000 Hz (100)", (s, x) => s with { RateHz = x });
        Number("--rate-off", "by how much the true rate exceeds the stated one, percent", (s, x) => s with { RateOffPercent = x });
        Text("--spo2", "TRACK", "saturation over time, percent: 97 or 96@0,88@60 or '97,step 88@60'", (s, x) => s with { Spo2 = ScenarioText.ParseTrack("--spo2", x) });
        Text("--pulse", "TRACK", "pulse rate over time, 1/min", (s, x) => s with { Pulse = ScenarioText.ParseTrack("--pulse", x) });
        Text("--perfusion", "TRACK", "perfusion over time, percent", (s, x) => s with { Perfusion = ScenarioText.ParseTrack("--perfusion", x) });
        Text("--rhythm", "NAME", "how the beats are spaced", (s, x) => s with { Rhythm = ScenarioText.ParseRhythm(x) });
        Number("--irregularity", "half width of an irregular rhythm's spread, percent", (s, x) => s with { IrregularityPercent = x });
        Number("--beat-variation", "deviation of the interval beat by beat, percent", (s, x) => s with { BeatVariationPercent = x });
        Number("--second-wave", "height of the second wave over the first", (s, x) => s with { SecondWave = x });
        Number("--respiration", "size of breathing in the light, percent", (s, x) => s with { RespirationPercent = x });
        Number("--respiration-rate", "breaths a minute", (s, x) => s with { RespirationPerMinute = x });
        Number("--baseline", "slow course of the light, percent", (s, x) => s with { BaselinePercent = x });
        Number("--noise", "white noise, share of the light", (s, x) => s with { Noise = x });
        Text("--extinction", "NAME", "how saturation becomes R: line or 660/940", (s, x) => s with { Ratio = ScenarioText.ParseRatio(x) });
        Number("--missing", "share of samples lost at random", (s, x) => s with { MissingShare = x });
        Number("--repeats", "share of rows written twice", (s, x) => s with { RepeatShare = x });
        Whole("--bits", "bits of the converter (18)", (s, x) => s with { Bits = x });
        Whole("--counter-bits", "width of the written sample counter", (s, x) => s with { CounterBits = x });
        Add(new Option<ulong?>("--seed") { HelpName = "N", Description = "the same seed gives the same recording (1)" }, (s, x) => x is { } seed ? s with { Seed = seed } : s);
        Add(new Option<bool>("--ambient") { Description = "writes a column of dark samples" }, (s, x) => s with { WithAmbientColumn = x });
        Add(new Option<bool>("--acceleration") { Description = "writes columns of acceleration" }, (s, x) => s with { WithAcceleration = x });
        Add(
            new Option<string[]>("--episode") { HelpName = "TEXT", Description = "what happens for a while, KIND:FROM-TO[:KEY=VALUE,…]; repeatable" },
            (s, x) => s with { Episodes = [.. (x ?? []).Select(ScenarioText.ParseEpisode)] });
    }

    public void AddTo(Command command)
    {
        foreach (var (option, _) in entries)
        {
            command.Add(option);
        }
    }

    public Scenario Read(ParseResult parsed) =>
        entries.Aggregate(new Scenario(), (scenario, entry) => entry.Apply(parsed, scenario));

    private void Number(string name, string description, Func<Scenario, double, Scenario> apply) =>
        Add(new Option<double?>(name) { HelpName = "X", Description = description }, (s, x) => x is { } value ? apply(s, value) : s);

    private void Whole(string name, string description, Func<Scenario, int, Scenario> apply) =>
        Add(new Option<int?>(name) { HelpName = "N", Description = description }, (s, x) => x is { } value ? apply(s, value) : s);

    private void Text(string name, string form, string description, Func<Scenario, string, Scenario> apply) =>
        Add(new Option<string?>(name) { HelpName = form, Description = description }, (s, x) => x is null ? s : apply(s, x));

    private void Add<T>(Option<T> option, Func<Scenario, T?, Scenario> apply) =>
        entries.Add((option, (parsed, scenario) => apply(scenario, parsed.GetValue(option))));
}
