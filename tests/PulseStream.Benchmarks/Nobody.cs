using PulseStream.Readings;
using PulseStream.Signal;

namespace PulseStream.Benchmarks;

/// <summary>Counts what a reader tells, so that no work can be left away.</summary>
internal sealed class Nobody : IReadingObserver
{
    public long Beats { get; private set; }

    public long Seconds { get; private set; }

    public long Usable { get; private set; }

    public long Readings { get; private set; }

    public void OnBeat(in Beat beat) => Beats++;

    public void OnSecond(in Second second)
    {
        Seconds++;
        Usable += second.IsUsable ? 1 : 0;
    }

    public void OnReading(Reading reading) => Readings++;

    public void OnSitting(Sitting sitting)
    {
    }
}
