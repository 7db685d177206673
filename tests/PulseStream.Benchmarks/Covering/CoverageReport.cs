using PulseStream.Accuracy;
using PulseStream.Accuracy.Statistics;

namespace PulseStream.Benchmarks.Covering;

/// <summary>How often the 95 % intervals of a statement of accuracy hold the truth, over a thousand simulated studies of each kind.</summary>
internal static class CoverageReport
{
    private const int Studies = 1000;

    private static readonly int[] Sizes = [10, 20, 30, 50];

    public static int Print()
    {
        Console.WriteLine("# How often the intervals of `validate` hold the truth");
        Console.WriteLine();
        Console.WriteLine("Made by `dotnet run -c Release --project tests/PulseStream.Benchmarks -- coverage > tests/coverage.md`: percent of");
        Console.WriteLine($"{Studies} simulated studies of each kind, the same ones each time; chance alone moves a figure by 1.4. Each subject has a bias of its");
        Console.WriteLine("own; difference is that between two groups of the subjects, width the mean width of the interval of A_rms in points.");
        Console.WriteLine();
        Console.WriteLine("| subjects | study | A_rms | bias | precision | lower limit | upper limit | difference | width |");
        Console.WriteLine("| ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var subjects in Sizes)
        {
            foreach (var kind in StudyKind.All)
            {
                Print(subjects, kind);
            }
        }

        Console.WriteLine();
        Console.WriteLine("Subjects whose biases are laid out far from a bell are the last two kinds: a few who read quite unlike the others are in");
        Console.WriteLine("a small study or they are not, and no interval makes up for those that are not.");
        return 0;
    }

    private static void Print(int subjects, StudyKind kind)
    {
        var held = new int[6];
        var width = 0.0;
        for (var seed = 0; seed < Studies; seed++)
        {
            var statement = AccuracyStatement.Of(kind.Study(subjects, seed), Quantity.Saturation, []);
            Count(held, [
                (statement.ArmsInterval, kind.Arms), (statement.BiasInterval, kind.Bias), (statement.PrecisionInterval, kind.Deviation),
                (statement.Limits?.LowInterval, kind.Bias - (1.96 * kind.Deviation)), (statement.Limits?.HighInterval, kind.Bias + (1.96 * kind.Deviation)),
                (statement.LargestDifference?.Interval, 0),
            ]);
            width += (statement.ArmsInterval!.Value.High - statement.ArmsInterval.Value.Low) / Studies;
        }

        Console.WriteLine($"| {subjects} | {kind.Name} | {string.Join(" | ", held.Select(count => $"{100.0 * count / Studies:0.0}"))} | {width:0.00} |");
    }

    private static void Count(int[] held, (ConfidenceInterval? Interval, double Truth)[] intervals)
    {
        foreach (var (i, (interval, truth)) in intervals.Index())
        {
            held[i] += interval is { } ends && ends.Contains(truth) ? 1 : 0;
        }
    }
}
