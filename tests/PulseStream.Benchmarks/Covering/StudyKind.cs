using PulseStream.Accuracy;

namespace PulseStream.Benchmarks.Covering;

/// <summary>A kind of study whose truth is known.</summary>
/// <param name="Name">What sets it apart.</param>
/// <param name="Bias">Mean error of the device.</param>
/// <param name="Between">Standard deviation of subjects' own biases.</param>
/// <param name="Within">Standard deviation within a subject.</param>
/// <param name="Subject">Draws a subject's deviation, mean 0 and standard deviation 1.</param>
/// <param name="IsUneven">Whether subjects have 5 to 44 pairs instead of 20.</param>
internal sealed record StudyKind(string Name, double Bias, double Between, double Within, Func<Random, double> Subject, bool IsUneven = false)
{
    public static readonly StudyKind[] All =
    [
        new("subjects alike", 1.0, 0.3, 2.0, Normal),
        new("typical", 0.5, 1.0, 1.5, Normal),
        new("bias larger than scatter", 2.0, 1.0, 1.5, Normal),
        new("subjects differ", 0.0, 2.0, 1.0, Normal),
        new("uneven numbers", 0.5, 1.5, 1.5, Normal, IsUneven: true),
        new("two sorts of subjects", 0.5, 1.5, 1.5, chance => ((chance.NextDouble() < 0.5 ? -1 : 1) * Math.Sqrt(0.75)) + (0.5 * Normal(chance))),
        new("one in seven far off", 0.5, 1.5, 1.5, chance => (0.9 * (Rare(chance) - 0.15) / Math.Sqrt(0.15 * 0.85)) + (Math.Sqrt(0.19) * Normal(chance))),
        new("exponential", 0.5, 1.5, 1.5, chance => -Math.Log(1 - chance.NextDouble()) - 1),
    ];

    public double Deviation => Math.Sqrt((Between * Between) + (Within * Within));

    public double Arms => Math.Sqrt((Bias * Bias) + (Deviation * Deviation));

    /// <summary>A study; three subjects of ten are in a group of their own, which reads like the others.</summary>
    public PairedReading[] Study(int subjects, int seed)
    {
        var chance = new Random(seed);
        return
        [
            .. Enumerable.Range(0, subjects).SelectMany(subject =>
            {
                var own = Bias + (Between * Subject(chance));
                var tone = subject % 10 is 2 or 5 or 8 ? "dark" : "light";
                return Enumerable.Range(0, IsUneven ? 5 + chance.Next(40) : 20)
                    .Select(_ => new PairedReading($"{subject:00}", 85, 85 + own + (Within * Normal(chance))) { SkinTone = tone }).ToArray();
            }),
        ];
    }

    private static double Rare(Random chance) => chance.NextDouble() < 0.15 ? 1 : 0;

    private static double Normal(Random chance) => Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
}
