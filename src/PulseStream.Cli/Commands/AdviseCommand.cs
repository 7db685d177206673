using System.CommandLine;
using PulseStream.Archive;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Triage;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Commands;

/// <summary>`advise`: triage of numbers and symptoms given as options.</summary>
internal sealed class AdviseCommand
{
    // Beyond this no pulse of a person lies; a number outside is a slip of the finger.
    private const double LargestPulse = 300;

    private readonly Option<string?> _spo2 = new("--spo2") { HelpName = "N", Description = "SpO2 in percent" };
    private readonly Option<string?> _pulse = new("--pulse") { HelpName = "N", Description = "pulse, beats a minute" };
    private readonly CommonOptions _common = new();
    private readonly PersonOptions _person = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private AdviseCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var advise = new AdviseCommand(surroundings, results);
        var command = new Command("advise", "Says what numbers and symptoms ask for. No medical device, no diagnosis.") { advise._spo2, advise._pulse };
        advise._person.AddTo(command);
        advise._common.AddTo(command);
        command.SetAction((ParseResult parsed) => advise.Run(parsed));
        return command;
    }

    private int Run(ParseResult parsed)
    {
        var isNdjson = _common.IsNdjson(parsed);
        var policy = _common.Policy(parsed) ?? TriagePolicy.AdultsAtHomeSeaLevel;
        var advice = AdviceJudge.Judge(policy, FindingsOf(parsed, policy));
        if (isNdjson)
        {
            using var line = new NdjsonLine(_results);
            NdjsonPrinter.Print(line, advice);
        }
        else
        {
            using var text = new StreamWriter(_results, leaveOpen: true);
            TextPrinter.Print(text, advice);
        }

        _results.Flush();
        return ExitStatus.Done;
    }

    private Findings FindingsOf(ParseResult parsed, TriagePolicy policy)
    {
        var spo2 = OptionText.Number(_spo2.Name, parsed.GetValue(_spo2), 0, 100);
        var pulse = OptionText.Number(_pulse.Name, parsed.GetValue(_pulse), 1, LargestPulse);
        if (spo2 is null && pulse is null && _person.Feeling(parsed) == Feeling.NotAsked)
        {
            throw new BadInputException("advise", "expected --spo2, --pulse or --feeling, found none of them", "Give what is known");
        }

        return new Findings
        {
            Spo2 = spo2 is { } percent ? new Saturation(percent, percent, percent) : null,
            PulseRatePerMinute = pulse,
            Circumstances = _person.Circumstances(parsed, _common.Curve(parsed) ?? CalibrationCurve.TextbookLine),
            Earlier = [.. _person.Previous(parsed), .. Archived(parsed, policy)],
        };
    }

    private IReadOnlyList<EarlierReading> Archived(ParseResult parsed, TriagePolicy policy)
    {
        if (_common.Archive(parsed) is { } archive)
        {
            ArchiveRecovery.RecoverAll(archive, _common.Say(parsed, _surroundings.Error));
        }

        return EarlierReadings.Of(_common.Archive(parsed), _common.Person(parsed), _surroundings.Clock.GetUtcNow(), policy, new DamagedHistory(_surroundings.Complain));
    }
}
