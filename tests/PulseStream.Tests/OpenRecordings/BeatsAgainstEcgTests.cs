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

    // The pulse wave of a regular heart at rest is expected to be found 98 times in 100 and more.
    private const double LeastF1 = 0.98;

    [Fact]
    public void BeatsOfAFingerMatchTheHeart()
    {
        var columns = OpenData.Columns(Path.Combine("icu-pleth", "record-01-120s-480s.csv"));
        var pleth = columns[^2];
        var heart = RPeaks(columns[^1]).Where(t => t > FromSeconds).ToArray();
        var found = OpenData.Run(RateHz, SampleColumns.Pleth, pleth.Select(Sample.OfPleth));
        var beats = found.Beats.Select(b => b.RiseIndex / RateHz).Where(t => t > FromSeconds).ToArray();
        var delay = MedianDelay(heart, beats);
        var matched = Matched(heart, beats, delay);
        var f1 = 2.0 * matched / (heart.Length + beats.Length);
        TestContext.Current.TestOutputHelper?.WriteLine($"F1 {f1:F4}: {matched} of {heart.Length} heart beats, {beats.Length} pulse beats, delay {delay:F3} s");
        Assert.True(f1 >= LeastF1, $"F1 {f1:F4}, heart {heart.Length}, pulse {beats.Length}, matched {matched}, delay {delay:F3} s");
    }

    private static List<double> RPeaks(double[] ecg)
    {
        const int refractory = (int)(0.3 * RateHz);
        var steep = new double[ecg.Length];
        for (var n = 2; n < ecg.Length - 2; n++)
        {
            var slope = ecg[n + 1] - ecg[n - 1];
            steep[n] = double.IsNaN(slope) ? 0 : slope * slope;
        }

        var limit = 0.25 * steep.Order().ElementAt((int)(0.99 * steep.Length));
        var peaks = new List<double>();
        for (var n = 0; n < ecg.Length; n++)
        {
            if (steep[n] < limit)
            {
                continue;
            }

            var end = Math.Min(n + refractory, ecg.Length);
            var best = Enumerable.Range(n, Math.Min(12, end - n)).MaxBy(k => ecg[k]);
            peaks.Add(best / RateHz);
            n = end;
        }

        return peaks;
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
