using PulseStream.Readings;
using PulseStream.Signal;

namespace PulseStream.Benchmarks;

/// <summary>Counts what a reader tells, so that no work can be left away.</summary>
internal sealed class Nobody : IReadingObserver
{
    public long Beats { get; private set; }

    public long Seconds { get; private set; }

    public long Usable { get; private set; }

    public void OnBeat(in Beat beat) => Beats++;

    public void OnSecond(Second second)
    {
        Seconds++;
        Usable += second is UsableSecond ? 1 : 0;
    }

    public void OnReading(Reading reading)
    {
    }

    public void OnSitting(Sitting sitting)
    {
    }
}
