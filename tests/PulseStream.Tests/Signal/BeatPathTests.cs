using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Tests.Readings;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Beats of a known pulse, whose intervals differ, beside a movement of twice its size and noise.</summary>
public sealed class BeatPathTests
{
    private const int RateHz = 50;
    private const double PeriodBins = 40.7;
    private const double Ratio = 0.6;
    private const double FrontPhase = 0.1;
    private static readonly SignalDesign Design = new(new SampleRate(RateHz), new());
    private static readonly SlowBasis Basis = Design.SlowOf(Design.Options.LongestWindowSeconds, SlowEdge.OfFastPulse);

    [Theory]
    [InlineData(0.85)]
    [InlineData(1)]
    [InlineData(1.15)]
    public void BeatsAreFoundBesideAMovement(double pace)
    {
        var rises = new List<double>();
        var calm = Calm();
        var pairs = new double[2 * Basis.Length];
        var moved = new double[pairs.Length];
        var random = new Random(21);
        var waves = Enumerable.Range(0, 40).Select(_ => (Hz: 0.9 + (4 * random.NextDouble()), Phase: 6.3 * random.NextDouble())).ToArray();
        for (var n = 0; n < Basis.Length; n++)
        {
            var beats = Beats(n, pace);
            if (n > 0 && Math.Floor(beats - FrontPhase) > Math.Floor(Beats(n - 1, pace) - FrontPhase))
            {
                rises.Add(n);
            }

            var pulse = -Finger.Volume(beats);
            var movement = 0.3 * 2 * Math.Sqrt(2.0 / waves.Length) * waves.Sum(w => Math.Sin((2 * Math.PI * w.Hz * n / RateHz) + w.Phase));
            moved[2 * n] = movement + (0.05 * (random.NextDouble() - 0.5));
            moved[(2 * n) + 1] = (1.4 * movement) + (0.05 * (random.NextDouble() - 0.5));
            pairs[2 * n] = pulse + moved[2 * n];
            pairs[(2 * n) + 1] = (Ratio * pulse) + moved[(2 * n) + 1];
        }

        Basis.Remove(pairs);
        Basis.Remove(moved);
        var path = Find(pairs, moved, calm);
        Assert.True(path.Likelihood > Design.Options.LeastBeatLikelihood, $"{path.Likelihood}");
        foreach (var rise in rises.Where(rise => rise > RateHz && rise < Basis.Length - RateHz))
        {
            Assert.Contains(path.Rises.ToArray(), found => Math.Abs(found - rise) <= 2);
        }
    }

    // Every other beat of a heart twice as fast as the calm one is no beat of the calm one's pace.
    [Fact]
    public void APaceFarFromTheCalmOneIsNotTaken()
    {
        var pairs = new double[2 * Basis.Length];
        for (var n = 0; n < Basis.Length; n++)
        {
            pairs[2 * n] = -Finger.Volume(2 * n / PeriodBins);
            pairs[(2 * n) + 1] = Ratio * pairs[2 * n];
        }

        Basis.Remove(pairs);
        var path = Find(pairs, pairs, Calm());
        Assert.InRange((path.Rises[^1] - path.Rises[0]) / (path.Count - 1), PeriodBins * 0.7, PeriodBins * 1.45);
    }

    private static double Beats(int bin, double pace) => (bin / PeriodBins / pace) + (0.05 * Math.Sin(2 * Math.PI * 0.25 * bin / RateHz));

    private static BeatPath Find(double[] pairs, double[] moved, PulseTemplate calm)
    {
        var movement = new MovementModel(Design);
        movement.Learn(moved);
        var path = new BeatPath(Design);
        path.Find(pairs, movement, calm, Ratio);
        return path;
    }

    private static PulseTemplate Calm()
    {
        var pairs = new double[2 * Basis.Length];
        for (var n = 0; n < Basis.Length; n++)
        {
            pairs[2 * n] = -Finger.Volume(n / PeriodBins);
            pairs[(2 * n) + 1] = Ratio * pairs[2 * n];
        }

        Basis.Remove(pairs);
        var calm = new PulseTemplate(Design);
        calm.Learn(pairs, [.. Enumerable.Range(0, 9).Select(k => (k + FrontPhase) * PeriodBins)], PeriodBins, 1, Ratio);
        return calm;
    }
}
