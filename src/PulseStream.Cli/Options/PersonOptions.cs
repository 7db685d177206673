using System.CommandLine;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Triage;

namespace PulseStream.Cli.Options;

/// <summary>Options about the person whose numbers are judged.</summary>
internal sealed class PersonOptions
{
    // A month: an earlier reading further back belongs to the archive.
    private const double LongestMinutes = 31 * 24 * 60;

    private readonly Option<string?> _feeling = new("--feeling") { HelpName = "well|poorly|breathless|severe", Description = "how the person feels; not asked is not well" };
    private readonly Option<string?> _target = new("--target") { HelpName = "LOW-HIGH", Description = "range of SpO2 that a clinician set for this person, percent" };
    private readonly Option<bool> _onOxygen = new("--on-oxygen") { Description = "the person is given oxygen" };
    private readonly Option<string?> _previousSpo2 = new("--previous-spo2") { HelpName = "N", Description = "an earlier SpO2 of this person, percent; with --previous-minutes" };
    private readonly Option<string?> _previousMinutes = new("--previous-minutes") { HelpName = "N", Description = "how many minutes ago that was" };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _feeling, _target, _onOxygen, _previousSpo2, _previousMinutes })
        {
            command.Add(option);
        }
    }

    public Circumstances Circumstances(ParseResult parsed, CalibrationCurve curve) => new()
    {
        Feeling = Feeling(parsed),
        Target = OptionText.Target(_target.Name, parsed.GetValue(_target)),
        OnOxygen = parsed.GetValue(_onOxygen),
        DeviceArmsPercent = curve.ArmsPercent,
    };

    /// <summary>How the person feels.</summary>
    public Feeling Feeling(ParseResult parsed) => OptionText.OneOf(_feeling.Name, parsed.GetValue(_feeling), "well", "poorly", "breathless", "severe") switch
    {
        "well" => Triage.Feeling.Well,
        "poorly" => Triage.Feeling.Poorly,
        "breathless" => Triage.Feeling.Breathless,
        "severe" => Triage.Feeling.Severe,
        _ => Triage.Feeling.NotAsked,
    };

    /// <summary>The earlier reading of the options, none where they are not given.</summary>
    public IReadOnlyList<EarlierReading> Previous(ParseResult parsed) =>
        (OptionText.Number(_previousSpo2.Name, parsed.GetValue(_previousSpo2), 0, 100), OptionText.Number(_previousMinutes.Name, parsed.GetValue(_previousMinutes), 0, LongestMinutes)) switch
        {
            ({ } spo2, { } minutes) => [new EarlierReading(spo2, minutes)],
            (null, null) => [],
            ({ }, null) => throw Alone(_previousSpo2.Name, _previousMinutes.Name),
            (null, { }) => throw Alone(_previousMinutes.Name, _previousSpo2.Name),
        };

    private static BadInputException Alone(string given, string missing) =>
        new(given, $"expected {missing} beside it, found none", "Give both or neither and run again");
}
