using System.Runtime.Intrinsics;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What two lights disagree by: a random walk, a pulse that hides beneath a movement, a movement.</summary>
public sealed class RandomWalkTests
{
    private const int Windows = 200;
    private const double WalkStep = 1e-5;

    // An even periodogram goes beyond the limit in a window of twenty by chance, and two hundred windows scatter.
    private const double LeastWalks = 0.88;

    // A pulse beneath a movement puts R off, and is to pass by chance in hardly any window; movement alone hides none.
    private const double MostHidden = 0.01;
    private const double MostMovements = 0.05;
    private static readonly SignalDesign Design = new(new SampleRate(50), new());
    private static readonly RandomWalk Walk = new(Design);

    // Its noise is known to the test that asks, as it is to the pipeline.
    [Theory]
    [InlineData(8, 0)]
    [InlineData(8, 3e-5)]
    [InlineData(6, 0)]
    public void AWalkIsOneInNearlyEveryWindow(int seconds, double noise) =>
        Assert.InRange(Count(seconds, noise, seed => Steps(seed)), LeastWalks * Windows, Windows);

    // A heart at 72 a minute whose intervals scatter by 2 %, with three waves a beat.
    [Theory]
    [InlineData(8, 0)]
    [InlineData(8, 3e-5)]
    [InlineData(6, 0)]
    public void AHiddenPulseIsHardlyEver(int seconds, double noise) =>
        Assert.InRange(Count(seconds, noise, seed => Pulse(seed)), 0, MostHidden * Windows);

    // Broadband movement of 0.7 to 3 Hz.
    [Fact]
    public void MovementOfAFewHertzIsHardlyEver() => Assert.InRange(Count(8, 0, seed => Movement(seed)), 0, MostMovements * Windows);

    private static int Count(int seconds, double noise, Func<int, IEnumerator<double>> rest) =>
        Enumerable.Range(0, Windows).Count(seed => Walk.IsLeft(Window(seconds, noise, rest(seed), new(1000 + seed)), 0, new(0, noise * noise, 0)));

    // Infrared's pulse makes no difference to what is left beside R times it: there is none here.
    private static double[] Window(int seconds, double noise, IEnumerator<double> rest, Random random)
    {
        var kernel = Design.Kernel;
        var basis = Design.SlowOf(seconds);
        var raw = new Vector128<double>[basis.Length + (2 * kernel.Half)];
        for (var n = 0; n < raw.Length && rest.MoveNext(); n++)
        {
            raw[n] = Vector128.Create(0, rest.Current + (noise * Gauss(random)));
        }

        var pairs = new double[2 * basis.Length];
        for (var n = 0; n < basis.Length; n++)
        {
            pairs[(2 * n) + 1] = kernel.Smooth(raw.AsSpan(n, kernel.Taps.Length))[1];
        }

        basis.Remove(pairs);
        return pairs;
    }

    private static IEnumerator<double> Steps(int seed)
    {
        var random = new Random(seed);
        for (var light = 0.0; ; light += WalkStep * Gauss(random))
        {
            yield return light;
        }
    }

    private static IEnumerator<double> Pulse(int seed)
    {
        var random = new Random(seed);
        for (var phase = random.NextDouble(); ;)
        {
            var step = 1.2 * (1 + (0.02 * Gauss(random))) / Design.BinRateHz;
            for (var from = Math.Floor(phase); Math.Floor(phase) == from; phase += step)
            {
                var turn = Math.Tau * phase;
                yield return 1e-4 * (Math.Sin(turn) + (0.5 * Math.Sin((2 * turn) + 1)) + (0.25 * Math.Sin((3 * turn) + 2)));
            }
        }
    }

    private static IEnumerator<double> Movement(int seed)
    {
        var random = new Random(seed);
        var waves = Enumerable.Range(0, 40).Select(_ => (Hz: 0.7 + (2.3 * random.NextDouble()), Phase: Math.Tau * random.NextDouble())).ToArray();
        for (var n = 0; ; n++)
        {
            yield return 1e-4 * waves.Sum(wave => Math.Sin((Math.Tau * wave.Hz * n / Design.BinRateHz) + wave.Phase));
        }
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
