using PulseStream.Accuracy;

namespace PulseStream.Benchmarks;

/// <summary>How often the 95 % intervals of a statement of accuracy hold the truth, over a thousand simulated studies of each kind.</summary>
internal static class Coverage
{
    private const int Studies = 1000;

    private static readonly int[] Subjects = [10, 20, 30, 50];

    private static readonly Kind[] Kinds =
    [
        new("subjects alike", 1.0, 0.3, 2.0, Uneven: false),
        new("typical", 0.5, 1.0, 1.5, Uneven: false),
        new("subjects differ", 0.0, 2.0, 1.0, Uneven: false),
        new("uneven numbers", 0.5, 1.5, 1.5, Uneven: true),
    ];

    public static int Print()
    {
        Console.WriteLine($"Share of {Studies} simulated studies whose 95 % interval holds the truth, percent, and the mean width of that of A_rms");
        Console.WriteLine("subjects  study             A_rms   bias  precision  limits  width");
        foreach (var subjects in Subjects)
        {
            foreach (var kind in Kinds)
            {
                Print(subjects, kind);
            }
        }

        return 0;
    }

    private static void Print(int subjects, Kind kind)
    {
        var variance = (kind.Between * kind.Between) + (kind.Within * kind.Within);
        var (arms, bias, precision, limits, width) = (0, 0, 0, 0, 0.0);
        for (var seed = 0; seed < Studies; seed++)
        {
            var statement = AccuracyStatement.Of(Study(subjects, kind, seed), Quantity.Saturation, []);
            arms += statement.ArmsInterval!.Value.Contains(Math.Sqrt((kind.Bias * kind.Bias) + variance)) ? 1 : 0;
            bias += statement.BiasInterval!.Value.Contains(kind.Bias) ? 1 : 0;
            precision += statement.PrecisionInterval!.Value.Contains(Math.Sqrt(variance)) ? 1 : 0;
            limits += statement.Limits!.HighInterval.Contains(kind.Bias + (1.96 * Math.Sqrt(variance))) ? 1 : 0;
            width += statement.ArmsInterval.Value.High - statement.ArmsInterval.Value.Low;
        }

        Console.WriteLine($"{subjects,8}  {kind.Name,-16} {Percent(arms),6} {Percent(bias),6} {Percent(precision),10} {Percent(limits),7} {width / Studies,6:0.00}");
    }

    private static string Percent(int held) => $"{100.0 * held / Studies:0.0}";

    private static PairedReading[] Study(int subjects, Kind kind, int seed)
    {
        var chance = new Random(seed);
        return
        [
            .. Enumerable.Range(0, subjects).SelectMany(subject =>
            {
                var own = kind.Bias + (kind.Between * Normal(chance));
                return Enumerable.Range(0, kind.Uneven ? 5 + chance.Next(40) : 20)
                    .Select(_ => new PairedReading($"{subject}", 85, 85 + own + (kind.Within * Normal(chance)))).ToArray();
            }),
        ];
    }

    private static double Normal(Random chance) => Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());

    private sealed record Kind(string Name, double Bias, double Between, double Within, bool Uneven);
}
