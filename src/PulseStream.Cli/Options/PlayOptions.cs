using System.CommandLine;
using PulseStream.Samples;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Cli.Options;

/// <summary>The options of `simulate` that play a recording on a port.</summary>
internal sealed class PlayOptions
{
    private const double SlowestSpeed = 0.01;
    private const double QuickestSpeed = 10_000;

    // A rate fitted to rounded times may be off in its last digits.
    private const double SampleRateSlack = 1e-6;

    private readonly Option<string?> _to = new("--to") { HelpName = "PORT", Description = "play the recording on a serial port or pseudo-terminal, as an instrument would" };
    private readonly Option<string?> _layout = new("--layout") { HelpName = "FILE", Description = "with --to: what the instrument says (JSON)" };
    private readonly Option<string?> _speed = new("--speed") { HelpName = "N", Description = "with --to: so many times as fast (1)" };
    private readonly Option<string?> _play = new("--play") { HelpName = "CSV", Description = "with --to: an existing recording instead of an invented one" };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _to, _layout, _speed, _play })
        {
            command.Add(option);
        }
    }

    public string? Port(ParseResult parsed) => parsed.GetValue(_to);

    public string? Played(ParseResult parsed) => parsed.GetValue(_play);

    public double Speed(ParseResult parsed) => OptionText.Number(_speed.Name, parsed.GetValue(_speed), SlowestSpeed, QuickestSpeed) ?? 1;

    public WireLayout Layout(ParseResult parsed) => parsed.GetValue(_layout) is { } path
        ? WireLayoutFile.Parse(InputFile.Read(path), path)
        : throw new BadInputException(_layout.Name, "expected a layout beside --to, found none", "Give the file that says what the instrument sends");

    /// <summary>Refuses a recording that lacks what the instrument says, or is sampled otherwise.</summary>
    public void Check(RecordingHeader header, WireLayout layout)
    {
        if ((layout.Columns & ~header.Columns) is var lacking && lacking != SampleColumns.None)
        {
            throw new BadInputException(_layout.Name, $"the layout says {layout.Columns}, the recording lacks {lacking}", "Give another layout, or a recording with these columns");
        }

        if (Math.Abs(header.Rate.Hz - layout.Rate.Hz) > SampleRateSlack * layout.Rate.Hz)
        {
            throw new BadInputException(_layout.Name, $"the layout says {layout.Rate.Hz} Hz, the recording has {header.Rate.Hz} Hz", "Give a layout with the recording's rate");
        }
    }
}
