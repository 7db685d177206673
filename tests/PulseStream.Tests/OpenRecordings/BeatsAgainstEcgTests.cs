using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.OpenRecordings;

/// <summary>
/// Beats of a finger plethysmogram against the R peaks of the ECG beside it. Recording: Pimentel et al., IEEE Trans Biomed
/// Eng 64(8), 1914 (2017), PhysioNet, doi:10.13026/C2208R. Pairing within 150 ms, sensitivity and predictivity as in
/// ANSI/AAMI EC57; the pulse's own constant delay behind the heart is taken off first.
/// </summary>
public sealed class BeatsAgainstEcgTests
{
    private const double RateHz = 125;
    private const double WindowSeconds = 0.15;

    // The first window is still filling before this.
    private const double FromSeconds = 10;

    // One beat in two hundred may go wrong at rest, one in seventy in noise that hides more than half of a weak beat.
    private const double LeastF1 = 0.995;
    private const double LeastF1InNoise = 0.985;

    // Noise in the band of the pulse, where no filter helps.
    private const double NoiseFromHz = 0.5;
    private const double NoiseToHz = 8;
    private const double NoiseDecibels = 5;

    [Fact]
    public void BeatsOfAFingerMatchTheHeart()
    {
        var columns = OpenData.Columns(Path.Combine("icu-pleth", "record-01-120s-480s.csv"));
        AssertMatch(columns[^2], columns[^1], LeastF1);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void BeatsAreFoundInNoiseOfTheirOwnBand(int seed)
    {
        var columns = OpenData.Columns(Path.Combine("icu-pleth", "record-01-120s-480s.csv"));
        var pleth = columns[^2];
        var noise = Noise(pleth.Length, seed);
        var size = Math.Sqrt(PowerAboutMovingMean(pleth) / Math.Pow(10, NoiseDecibels / 10));
        AssertMatch([.. pleth.Select((p, n) => p + (size * noise[n]))], columns[^1], LeastF1InNoise);
    }

    private static void AssertMatch(double[] pleth, double[] ecg, double leastF1)
    {
        var heart = RPeaks.Times(ecg, RateHz).Where(t => t > FromSeconds).ToArray();
        var found = OpenData.Run(RateHz, SampleColumns.Pleth, pleth.Select(Sample.OfPleth));
        var beats = found.Beats.Select(b => b.RiseIndex / RateHz).Where(t => t > FromSeconds).ToArray();
        var delay = MedianDelay(heart, beats);
        var matched = Matched(heart, beats, delay);
        var f1 = 2.0 * matched / (heart.Length + beats.Length);
        TestContext.Current.TestOutputHelper?.WriteLine($"F1 {f1:F4}: {matched} of {heart.Length} heart beats, {beats.Length} pulse beats, delay {delay:F3} s");
        Assert.True(f1 >= leastF1, $"F1 {f1:F4}, heart {heart.Length}, pulse {beats.Length}, matched {matched}, delay {delay:F3} s");
    }

    // Many waves of random phase, evenly over the band, of variance 1.
    internal static double[] Noise(int length, int seed)
    {
        const int waves = 500;
        var random = new Random(seed);
        var noise = new double[length];
        for (var w = 0; w < waves; w++)
        {
            var step = 2 * Math.PI * (NoiseFromHz + ((NoiseToHz - NoiseFromHz) * (w + random.NextDouble()) / waves)) / RateHz;
            var phase = 2 * Math.PI * random.NextDouble();
            for (var n = 0; n < length; n++)
            {
                noise[n] += Math.Sqrt(2.0 / waves) * Math.Sin((step * n) + phase);
            }
        }

        return noise;
    }

    internal static double PowerAboutMovingMean(double[] pleth)
    {
        const int half = (int)RateHz;
        return Enumerable.Range(half, pleth.Length - (2 * half))
            .Average(n => Math.Pow(pleth[n] - pleth.AsSpan(n - half, (2 * half) + 1).ToArray().Average(), 2));
    }

    private static double MedianDelay(double[] heart, double[] beats)
    {
        var delays = heart.Select(h => beats.Where(b => b > h).Select(b => b - h).DefaultIfEmpty(double.NaN).First())
            .Where(d => !double.IsNaN(d)).Order().ToArray();
        return delays[delays.Length / 2];
    }

    private static int Matched(double[] heart, double[] beats, double delay)
    {
        var matched = 0;
        var next = 0;
        foreach (var h in heart)
        {
            while (next < beats.Length && beats[next] - delay < h - WindowSeconds)
            {
                next++;
            }

            if (next < beats.Length && Math.Abs(beats[next] - delay - h) <= WindowSeconds)
            {
                matched++;
                next++;
            }
        }

        return matched;
    }
}
