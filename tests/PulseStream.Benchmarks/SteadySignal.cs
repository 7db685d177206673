using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Benchmarks;

/// <summary>A signal machine that has been fed for a minute: its windows are full.</summary>
internal static class SteadySignal
{
    private const int WarmUpSeconds = 60;

    public static FingerSignal At(double hz)
    {
        var header = TwoLightSignal.HeaderAt(hz);
        var signal = new FingerSignal(new SignalDesign(header.Rate, new SignalOptions()), header.Columns, header.FullScaleCounts);
        Feed(signal, TwoLightSignal.At(hz, WarmUpSeconds));
        return signal;
    }

    /// <summary>Feeds every sample; how many beats came out, so that no work can be left away.</summary>
    public static long Feed(FingerSignal signal, ReadOnlySpan<Sample> samples)
    {
        var beats = 0L;
        foreach (ref readonly var sample in samples)
        {
            if (signal.TryStep(sample, out _))
            {
                beats += signal.Beats.Length;
            }
        }

        return beats;
    }
}
