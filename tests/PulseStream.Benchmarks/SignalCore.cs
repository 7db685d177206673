using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Benchmarks;

/// <summary>
/// The signal machine in steady state over a minute of two lights in memory, against a loop that only averages them. One
/// operation is one sample: Op/s are samples a second.
/// </summary>
[MemoryDiagnoser]
[OperationsPerSecond]
[GroupBenchmarksBy(BenchmarkLogicalGroupRule.ByCategory)]
[CategoriesColumn]
public class SignalCore
{
    private const int Seconds = 60;
    private const int SlowHz = 100;
    private const int FastHz = 250;
    private readonly Sample[] slowMinute = TwoLightSignal.At(SlowHz, Seconds);
    private readonly Sample[] fastMinute = TwoLightSignal.At(FastHz, Seconds);
    private readonly FingerSignal slowSignal = SteadySignal.At(SlowHz);
    private readonly FingerSignal fastSignal = SteadySignal.At(FastHz);

    [Benchmark(Baseline = true, OperationsPerInvoke = SlowHz * Seconds)]
    [BenchmarkCategory("100 Hz")]
    public double AverageAt100Hz() => AverageOf(slowMinute);

    [Benchmark(OperationsPerInvoke = SlowHz * Seconds)]
    [BenchmarkCategory("100 Hz")]
    public long FingerSignalAt100Hz() => SteadySignal.Feed(slowSignal, slowMinute);

    [Benchmark(Baseline = true, OperationsPerInvoke = FastHz * Seconds)]
    [BenchmarkCategory("250 Hz")]
    public double AverageAt250Hz() => AverageOf(fastMinute);

    [Benchmark(OperationsPerInvoke = FastHz * Seconds)]
    [BenchmarkCategory("250 Hz")]
    public long FingerSignalAt250Hz() => SteadySignal.Feed(fastSignal, fastMinute);

    private static double AverageOf(Sample[] samples)
    {
        var (red, infrared) = (0.0, 0.0);
        foreach (ref readonly var sample in samples.AsSpan())
        {
            red += sample.Red;
            infrared += sample.Infrared;
        }

        return (red + infrared) / samples.Length;
    }
}
