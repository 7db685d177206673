using System.CommandLine;
using System.Globalization;
using PulseStream.Samples;
using PulseStream.Sweeps;

namespace PulseStream.Cli.Options;

/// <summary>The options that lay out the grid of a sweep.</summary>
internal sealed class GridOptions
{
    // What a night on one core does.
    private const long MostRuns = 1_000_000;

    private readonly Option<string?> _spo2 = List("--spo2", "saturations, percent", new SweepGrid().Spo2);
    private readonly Option<string?> _perfusion = List("--perfusion", "perfusions, percent", new SweepGrid().Perfusion);
    private readonly Option<string?> _pulse = List("--pulse", "pulse rates, /min", new SweepGrid().Pulse);
    private readonly Option<string?> _motion = List("--motion", "sizes of a random movement over the pulse, throughout", new SweepGrid().Motion);
    private readonly Option<string?> _noise = List("--noise", "white noise, deviation over the light", new SweepGrid().Noise);
    private readonly Option<string?> _rate = List("--rate", "sample rates, Hz", new SweepGrid().Rate);
    private readonly Option<string?> _runs = new("--runs") { HelpName = "N", Description = "recordings a cell (5)" };
    private readonly Option<string?> _seconds = new("--seconds") { HelpName = "N", Description = "length of a recording (45)" };
    private readonly Option<string?> _seed = new("--seed") { HelpName = "N", Description = "the same seed gives the same sweep (1)" };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _spo2, _perfusion, _pulse, _motion, _noise, _rate, _runs, _seconds, _seed })
        {
            command.Add(option);
        }
    }

    /// <summary>The grid that was asked for.</summary>
    public SweepGrid GridOf(ParseResult parsed)
    {
        var usual = new SweepGrid();
        var grid = new SweepGrid
        {
            Spo2 = Numbers(parsed, _spo2) ?? usual.Spo2,
            Perfusion = Numbers(parsed, _perfusion) ?? usual.Perfusion,
            Pulse = Numbers(parsed, _pulse) ?? usual.Pulse,
            Motion = Numbers(parsed, _motion) ?? usual.Motion,
            Noise = Numbers(parsed, _noise) ?? usual.Noise,
            Rate = Numbers(parsed, _rate) ?? usual.Rate,
            RunsPerCell = (int)(OptionText.Whole(_runs.Name, parsed.GetValue(_runs), 1, 1000) ?? usual.RunsPerCell),
            Seconds = OptionText.Number(_seconds.Name, parsed.GetValue(_seconds), 10, 3600) ?? usual.Seconds,
            Seed = (ulong)(OptionText.Whole(_seed.Name, parsed.GetValue(_seed), 0, int.MaxValue) ?? (long)usual.Seed),
        };
        var cells = new[] { grid.Spo2, grid.Perfusion, grid.Pulse, grid.Motion, grid.Noise, grid.Rate }.Aggregate(1L, (product, list) => product * list.Count);
        return cells * grid.RunsPerCell <= MostRuns
            ? grid
            : throw new BadInputException("sweep", $"expected {MostRuns} recordings at most, found {cells} cells of {grid.RunsPerCell}", "Give shorter lists or fewer --runs");
    }

    private static Option<string?> List(string name, string description, IReadOnlyList<double> usual) =>
        new(name) { HelpName = "N,..", Description = $"{description} ({string.Join(',', usual)})" };

    private static double[]? Numbers(ParseResult parsed, Option<string?> option)
    {
        if (parsed.GetValue(option) is not { } text)
        {
            return null;
        }

        double?[] numbers = [.. text.Split(',').Select(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number >= 0 && double.IsFinite(number) ? number : (double?)null)];
        return numbers.All(number => number is not null) && numbers.Distinct().Count() == numbers.Length
            ? [.. numbers.Select(number => number!.Value)]
            : throw new BadInputException(option.Name, $"expected numbers with commas between them, each once, such as 70,80,90, found '{text}'", "Correct the option and run again");
    }
}
