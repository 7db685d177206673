using System.Runtime.Intrinsics;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>How a window bends, and what white noise is in it.</summary>
public sealed class CurvatureTests
{
    // 0.08 s at 50 bins a second.
    private const int Step = 4;
    private static readonly SignalDesign Design = new(new SampleRate(50), new());

    [Fact]
    public void EachPlaceHasTheSecondDifferenceOfBothLights()
    {
        var random = new Random(1);
        var pairs = Enumerable.Range(0, 2 * 30).Select(_ => random.NextDouble()).ToArray();
        var curved = Design.Curvature.Of(pairs, new double[pairs.Length]).ToArray();
        Assert.Equal(30 - (2 * Step), Design.Curvature.LengthOf(30));
        Assert.Equal(2 * Design.Curvature.LengthOf(30), curved.Length);
        Assert.Equal(
            Enumerable.Range(0, curved.Length).Select(n => pairs[n] + pairs[n + (4 * Step)] - (pairs[n + (2 * Step)] + pairs[n + (2 * Step)])),
            curved);
    }

    // By the mean over many windows and by how much it differs from one to the next.
    [Fact]
    public void WhiteNoiseHasTheDegreesOfFreedomThatAreTold()
    {
        const int windows = 2000;
        const int bins = 380;
        const double tolerance = 0.1;
        var (mean, square) = (0.0, 0.0);
        for (var seed = 0; seed < windows; seed++)
        {
            var power = PowerOfNoise(new Random(seed), bins);
            mean += power / windows;
            square += power * power / windows;
        }

        var freedom = Design.Curvature.LengthOf(bins) * Design.Curvature.FreedomPerBin;
        Assert.Equal(1, mean / (freedom * Design.Curvature.NoisePerFreedom), tolerance);
        Assert.Equal(1, 2 * mean * mean / (square - (mean * mean)) / freedom, tolerance);
    }

    // What falls with the square of its frequency is white when bent: a drift at half a hertz and one four times as fast, a sixteenth as large.
    [Fact]
    public void ASlowDriftBendsNoMoreThanAFastOneThatIsSmaller()
    {
        const double tolerance = 0.15;
        Assert.Equal(1, SizeOfWave(2, 1.0 / 16) / SizeOfWave(0.5, 1), tolerance);
    }

    [Fact]
    public void TheFastestPulseIsBentByWhatIsTold() => Assert.Equal(1, SizeOfWave(4, 1) / Math.Sqrt(0.5) / Design.Curvature.GainOfFastest, 0.01);

    private static double PowerOfNoise(Random random, int bins)
    {
        var kernel = Design.Kernel;
        var noise = Enumerable.Range(0, bins + (2 * kernel.Half)).Select(_ => Vector128.Create(Gauss(random), 0)).ToArray();
        var pairs = new double[2 * bins];
        for (var n = 0; n < bins; n++)
        {
            pairs[2 * n] = kernel.Smooth(noise.AsSpan(n, kernel.Taps.Length))[0];
        }

        return RatioSums.Over(Design.Curvature.Of(pairs, new double[pairs.Length])).Infrared;
    }

    private static double SizeOfWave(double hz, double size)
    {
        var pairs = Enumerable.Range(0, 2 * 400).Select(n => size * Math.Sin(2 * Math.PI * hz * (n / 2) / Design.BinRateHz)).ToArray();
        var curved = Design.Curvature.Of(pairs, new double[pairs.Length]);
        return Math.Sqrt(RatioSums.Over(curved).Infrared / (curved.Length / 2));
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
