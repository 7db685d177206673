using PulseStream.Samples;
using PulseStream.Sources.Live;
using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Cli.Commands;

/// <summary>
/// Plays samples on a port as an instrument would: in time, and without waiting for anybody. While its port is gone, what
/// it would have said is lost, and its counter goes on.
/// </summary>
internal sealed class InstrumentPlayer(string port, WireLayout layout, double speed, TimeProvider clock, CancellationToken cancel) : IDisposable
{
    // Short beside a sample of the quickest instrument's frame; long enough to leave the processor alone.
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(4);

    private static readonly TimeSpan TimeToReopen = TimeSpan.FromMilliseconds(200);

    private readonly WireEncoder _encoder = new(layout);
    private readonly List<byte> _due = [];
    private readonly long _started = clock.GetTimestamp();
    private SerialLine? _line = SerialLine.Open(port, layout.Line);
    private long _lost;

    /// <summary>Samples said so far.</summary>
    public long Samples { get; private set; }

    /// <summary>Says a block's samples, each when its time has come.</summary>
    public void Play(SampleBlock block)
    {
        var index = block.FirstIndex;
        foreach (ref readonly var sample in block.Samples.Span)
        {
            WaitFor(layout.Rate.SecondsAt(index) / speed);
            if (cancel.IsCancellationRequested)
            {
                return;
            }

            _due.AddRange(_encoder.Say(index++, sample));
            Samples++;
        }
    }

    /// <summary>Says what is due.</summary>
    public void Flush()
    {
        var bytes = _due.ToArray();
        _due.Clear();
        try
        {
            Reopen();
            if (bytes.Length > 0)
            {
                _line?.Write(bytes);
            }
        }
        catch (IOException)
        {
            _line?.Dispose();
            (_line, _lost) = (null, clock.GetTimestamp());
        }
    }

    public void Dispose()
    {
        Flush();
        _line?.Dispose();
    }

    private void WaitFor(double seconds)
    {
        while (clock.GetElapsedTime(_started).TotalSeconds < seconds && !cancel.IsCancellationRequested)
        {
            Flush();
            cancel.WaitHandle.WaitOne(Pause);
        }
    }

    private void Reopen()
    {
        if (_line is not null || clock.GetElapsedTime(_lost) < TimeToReopen)
        {
            return;
        }

        try
        {
            _line = SerialLine.Open(port, layout.Line);
        }
        catch (BadInputException)
        {
            _lost = clock.GetTimestamp();
        }
    }
}
