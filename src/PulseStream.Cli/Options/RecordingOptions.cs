using System.CommandLine;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Cli.Options;

/// <summary>What a person may say about a recording that its file does not.</summary>
internal sealed class RecordingOptions
{
    // Above any converter's largest count, so that only slips are refused.
    private const double LargestFullScale = 1e12;

    private readonly Option<string?> _rate = new("--rate") { HelpName = "HZ", Description = "sample rate where a file does not tell it, 25 to 1000" };
    private readonly Option<string?> _fullScale = new("--full-scale") { HelpName = "N", Description = "the converter's largest count, to judge clipping" };
    private readonly Option<string?> _start = new("--start") { HelpName = "TIME", Description = "when the recording began, ISO 8601 with offset" };
    private readonly Option<string[]> _map = new("--map")
    {
        HelpName = "CHANNEL=SIGNAL",
        Description = "which signal of a WFDB or EDF file, or which column of CSV, carries red, infrared, ambient, pleth, accel_x, accel_y, accel_z, where its name does not tell; repeatable",
        AllowMultipleArgumentsPerToken = false,
    };

    /// <summary>Name of the option that tells when a recording began.</summary>
    public string StartName => _start.Name;

    /// <summary>Adds all of them to a command.</summary>
    public void AddTo(Command command)
    {
        AddWithoutStartTo(command);
        command.Add(_start);
    }

    /// <summary>The same to a command to which it does not matter when a recording began.</summary>
    public void AddWithoutStartTo(Command command)
    {
        foreach (var option in new Option[] { _rate, _fullScale, _map })
        {
            command.Add(option);
        }
    }

    /// <summary>Only which signal carries what.</summary>
    public void AddOnlyMapTo(Command command) => command.Add(_map);

    public CsvOptions OptionsOf(ParseResult parsed, Action<string> say) => new(
        OptionText.Number(_rate.Name, parsed.GetValue(_rate), SampleRate.LowestHz, SampleRate.HighestHz),
        OptionText.Number(_fullScale.Name, parsed.GetValue(_fullScale), 1, LargestFullScale),
        OptionText.Instant(_start.Name, parsed.GetValue(_start)),
        say);

    public SignalMap MapOf(ParseResult parsed) => SignalMap.Parse(parsed.GetValue(_map) ?? []);
}
