using System.CommandLine;
using PulseStream.Comparison;
using PulseStream.Triage;

namespace PulseStream.Cli.Options;

/// <summary>The limits of `compare`: past one of them the command ends with status 1.</summary>
internal sealed class ComparisonLimits
{
    private const double MostPoints = 100;

    private readonly Option<bool> _allowLost = new("--allow-lost") { Description = "a lost alarm alone is no failure" };
    private readonly Option<string?> _maxGained = new("--max-gained") { HelpName = "N", Description = "recordings that may have gained an alarm" };
    private readonly Option<string?> _maxMoved = new("--max-moved") { HelpName = "N", Description = "recordings whose readings may have moved" };
    private readonly Option<string?> _maxMove = new("--max-move") { HelpName = "POINTS", Description = "by how much a reading may have moved" };
    private readonly Option<string?> _maxOnlyA = new("--max-only-a") { HelpName = "N", Description = "readings that may have vanished" };
    private readonly Option<string?> _maxOnlyB = new("--max-only-b") { HelpName = "N", Description = "readings that may have appeared" };
    private readonly Option<string?> _maxUsedLoss = new("--max-used-loss") { HelpName = "SHARE", Description = "by how much the share of used seconds may have fallen, 0 to 1" };
    private readonly Option<string?> _within = new("--within") { HelpName = "SECONDS", Description = "how far apart A and B may accept the same reading (5)" };
    private readonly Option<string?> _alarm = new("--alarm") { HelpName = "LEVEL", Description = "least urgent advice that counts as an alarm: recheck (default), call, doctor-now, emergency" };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _allowLost, _maxGained, _maxMoved, _maxMove, _maxOnlyA, _maxOnlyB, _maxUsedLoss, _within, _alarm })
        {
            command.Add(option);
        }
    }

    /// <summary>What counts as the same reading and as an alarm.</summary>
    public ComparisonOptions OptionsOf(ParseResult parsed)
    {
        var usual = new ComparisonOptions();
        var name = OptionText.OneOf(_alarm.Name, parsed.GetValue(_alarm), "recheck", "call", "doctor-now", "emergency");
        return new ComparisonOptions
        {
            WithinSeconds = Count(parsed, _within) ?? usual.WithinSeconds,
            AlarmFrom = name is not null && AdviceLevelName.TryParse(name, out var level) ? level : usual.AlarmFrom,
        };
    }

    /// <summary>Makes sure that every limit can be read, before anything is compared.</summary>
    public void Check(ParseResult parsed) => Exceeded(parsed, new RunComparison([]));

    /// <summary>The limits that a comparison passed, in words without a full stop.</summary>
    public IReadOnlyList<string> Exceeded(ParseResult parsed, RunComparison comparison)
    {
        var found = new List<string>();
        var lost = comparison.Count(Verdict.Lost);
        Note(lost, parsed.GetValue(_allowLost) ? null : 0, "recordings that lost an alarm");
        Note(comparison.Count(Verdict.Gained), Count(parsed, _maxGained), "recordings that gained an alarm");
        Note(comparison.Count(Verdict.Moved), Count(parsed, _maxMoved), "recordings whose readings moved");
        Note(comparison.LargestMove ?? 0, OptionText.Number(_maxMove.Name, parsed.GetValue(_maxMove), 0, MostPoints), "points of the largest move");
        Note(comparison.OnlyA, Count(parsed, _maxOnlyA), "readings only in A");
        Note(comparison.OnlyB, Count(parsed, _maxOnlyB), "readings only in B");
        Note((comparison.UsedA - comparison.UsedB) ?? 0, OptionText.Number(_maxUsedLoss.Name, parsed.GetValue(_maxUsedLoss), 0, 1), "of the seconds no longer used");
        return found;

        void Note(double value, double? limit, string what)
        {
            if (value > limit)
            {
                found.Add($"{what}: {value:0.####}, at most {limit:0.####} expected");
            }
        }
    }

    private static long? Count(ParseResult parsed, Option<string?> option) =>
        OptionText.Whole(option.Name, parsed.GetValue(option), 0, int.MaxValue);
}
