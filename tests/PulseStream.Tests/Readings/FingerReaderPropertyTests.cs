using CsCheck;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Tests.Samples;
using Xunit;

namespace PulseStream.Tests.Readings;

public sealed class FingerReaderPropertyTests
{
    // Rounding of logarithms over a window.
    private const double ScaleTolerance = 1e-9;
    private const int Streams = 20;

    [Fact]
    public void AnyCutIntoBlocksGivesTheSameEvents()
    {
        var samples = new Finger { Seconds = 25, Spo2 = t => 97 - (t / 10) }.Samples();
        samples.AsSpan(1230, 160).Clear();
        var whole = Heard.Of(100, samples).Events;
        Gen.Int[1, 700].Array[1, 8].Sample(cuts => Heard.Of(100, samples, cuts: cuts).Events.SequenceEqual(whole), iter: Streams);
    }

    [Fact]
    public void EachLightScaledByAFactorOfItsOwnReadsTheSame()
    {
        var samples = new Finger { Seconds = 20 }.Samples();
        var plain = Heard.Of(100, samples);
        Gen.Select(Gen.Double[0.1, 10], Gen.Double[0.1, 10]).Sample(
            (red, infrared) =>
            {
                var scaled = Heard.Of(100, Array.ConvertAll(samples, s => (Sample?)Sample.OfLight(red * s!.Value.Red, infrared * s.Value.Infrared)));
                return scaled.Readings.Select(r => r.WholeSpo2Percent).SequenceEqual(plain.Readings.Select(r => r.WholeSpo2Percent))
                    && Near(scaled.Usable.Select(s => s.Spo2!.Value.Percent), plain.Usable.Select(s => s.Spo2!.Value.Percent))
                    && Near(scaled.Beats.Select(b => b.RatioOfRatios), plain.Beats.Select(b => b.RatioOfRatios));
            },
            iter: Streams);
    }

    [Fact]
    public void NothingIsAllocatedOnceTheSignalRuns()
    {
        var samples = Array.ConvertAll(new Finger { Seconds = 40 }.Samples(), s => s!.Value);
        var seconds = 0;
        Assert.Equal(0, Allocated.LeastBytes(() =>
        {
            var signal = new FingerSignal(new SignalDesign(new SampleRate(100), new SignalOptions()), SampleColumns.Red | SampleColumns.Infrared, null);
            seconds = Run(signal, samples.AsSpan(0, 2000));
            return () => seconds += Run(signal, samples.AsSpan(2000));
        }));
        Assert.Equal(40, seconds);
    }

    private static int Run(FingerSignal signal, ReadOnlySpan<Sample> samples)
    {
        var seconds = 0;
        foreach (ref readonly var sample in samples)
        {
            seconds += signal.TryStep(sample, out _) ? 1 : 0;
        }

        return seconds;
    }

    private static bool Near(IEnumerable<double> found, IEnumerable<double> expected) =>
        found.Count() == expected.Count() && found.Zip(expected).All(pair => Math.Abs(pair.First - pair.Second) <= ScaleTolerance * Math.Max(1, Math.Abs(pair.Second)));
}
