using PulseStream.Accuracy;

namespace PulseStream.Tests.Accuracy;

/// <summary>Studies with a known truth: each subject has a bias of its own.</summary>
internal static class SimulatedStudies
{
    public const double Bias = 0.5;
    public const double BetweenSubjects = 1.0;
    public const double WithinSubject = 1.5;

    public static PairedReading[] Of(int subjects, int pairs, int seed, Func<int, (string? Tone, double Bias)>? groupOf = null, double between = BetweenSubjects, double within = WithinSubject)
    {
        var chance = new Random(seed);
        return
        [
            .. Enumerable.Range(0, subjects).SelectMany(subject =>
            {
                var (tone, bias) = groupOf?.Invoke(subject) ?? (null, Bias);
                var own = bias + (between * Normal(chance));
                return Enumerable.Range(0, pairs).Select(_ =>
                {
                    var truth = 70 + (30 * chance.NextDouble());
                    return new PairedReading($"s{subject:00}", truth, truth + own + (within * Normal(chance))) { SkinTone = tone };
                }).ToArray();
            }),
        ];
    }

    public static double Normal(Random chance) => Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
}
