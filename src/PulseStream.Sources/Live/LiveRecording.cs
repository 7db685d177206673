using System.Reactive.Disposables;
using System.Reactive.Linq;
using System.Reactive.Subjects;
using System.Threading.Channels;
using PulseStream.Samples;
using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Live;

/// <summary>
/// An instrument on a serial port, as a recording that goes on until it is cancelled or the device is given up. The cable
/// may be pulled: the port is tried again, and what was missed is missing samples of the same session.
/// <para>A thread of its own reads the port from <see cref="Open"/> on; samples are pushed by whoever subscribes.</para>
/// </summary>
public sealed class LiveRecording : Recording
{
    // Any instrument has said a whole frame by then.
    private const double LatestFrameSeconds = 5;

    // A hundred seconds of reads ten times a second: longer than any disk is busy, small in memory.
    private const int MostArrivals = 1024;

    private readonly Channel<Arrival> _arrivals = Channel.CreateBounded<Arrival>(new BoundedChannelOptions(MostArrivals) { SingleReader = true, SingleWriter = true });
    private readonly BehaviorSubject<LinkChange> _link = new(new LinkChange(LinkState.Waiting, LinkState.Waiting, 0));
    private readonly CancellationTokenSource _stop = new();
    private readonly WireDecoder _decoder;
    private readonly TimeProvider _clock;
    private readonly Action<string>? _say;
    private readonly string _port;
    private readonly PortReader _reader;
    private readonly Task _reading;
    private RecordingHeader _header;
    private double? _firstByteSeconds;
    private bool _hasSaidRate;
    private bool _hasSaidNothingFits;
    private bool _isDisposed;

    private LiveRecording(string port, WireLayout layout, LiveOptions options, TimeProvider clock)
    {
        (_port, _clock, _say, _decoder) = (port, clock, options.Say, new WireDecoder(layout));
        _header = new RecordingHeader(Path.GetFileName(port), layout.Rate, layout.Columns, layout.FullScaleCounts, clock.GetLocalNow());
        var line = SerialLine.Open(port, layout.Line);
        _reader = new PortReader(port, layout.Line, new LinkWatch(options.GiveUpAfterSeconds), clock, _arrivals.Writer, _link.OnNext);

        // A pool thread would be missed by others: this one is taken as long as the port is.
        _reading = Task.Factory.StartNew(() => _reader.Run(line, _stop.Token), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    /// <summary>What is known before the first sample; its start is when the port was opened, and once <see cref="WaitForInstrument"/> has returned true, when the first byte came.</summary>
    public override RecordingHeader Header => _header;

    /// <inheritdoc/>
    public override SampleTally Tally => _decoder.Tally;

    /// <summary>How it stands with the cable: the present state at once, then each change, told by the thread that reads the port. Completes when it stops.</summary>
    public IObservable<LinkChange> Link => _link.AsObservable();

    /// <summary>Whether the device was given up; known once <see cref="Blocks"/> has completed.</summary>
    public bool IsGivenUp => _reader.HasGivenUp;

    /// <summary>Refused frames by cause, in words; empty where there are none.</summary>
    public string FaultWords => _decoder.FaultWords;

    /// <summary>Opens a port and begins to read it.</summary>
    /// <param name="port">Its name.</param>
    /// <param name="layout">What the instrument says.</param>
    /// <param name="options">How to behave.</param>
    /// <param name="clock">Tells the start, silence and gaps; never a value of a sample.</param>
    /// <exception cref="BadInputException">The port cannot be opened.</exception>
    public static LiveRecording Open(string port, WireLayout layout, LiveOptions options, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(port);
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(clock);
        return new LiveRecording(port, layout, options, clock);
    }

    /// <summary>Waits for the first byte, however long.</summary>
    /// <param name="cancel">Ends the wait.</param>
    /// <returns>False where cancelled, or the device was given up.</returns>
    public bool WaitForInstrument(CancellationToken cancel)
    {
        while (WaitForArrival(cancel))
        {
            if (_arrivals.Reader.TryPeek(out var first) && first.Bytes.Length > 0)
            {
                _header = _header with { Start = _clock.GetLocalNow() };
                return true;
            }

            // Opened again while waiting: nothing had begun that this could break.
            _arrivals.Reader.TryRead(out _);
        }

        return false;
    }

    /// <summary>The samples as they come, pushed by the thread that subscribes before Subscribe returns. Completes when cancelled or given up.</summary>
    /// <param name="cancel">Ends the stream; what has been received by then is pushed.</param>
    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => Observable.Create<SampleBlock>(observer =>
    {
        while (WaitForArrival(cancel))
        {
            PushNext(observer);
        }

        Stop();
        while (PushNext(observer))
        {
        }

        _decoder.Finish();
        PushDecoded(observer);
        observer.OnCompleted();
        return Disposable.Empty;
    });

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing && !_isDisposed)
        {
            _isDisposed = true;
            Stop();
            _link.OnCompleted();
            _link.Dispose();
            _stop.Dispose();
        }
    }

    private void Stop()
    {
        _stop.Cancel();
        _reading.Wait();
    }

    private bool WaitForArrival(CancellationToken cancel)
    {
        try
        {
            return _arrivals.Reader.WaitToReadAsync(cancel).AsTask().GetAwaiter().GetResult();
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    private bool PushNext(IObserver<SampleBlock> observer)
    {
        if (!_arrivals.Reader.TryRead(out var arrival))
        {
            return false;
        }

        if (arrival.Bytes.Length > 0)
        {
            _decoder.Read(arrival.Bytes, arrival.Seconds);
            SayWhereNothingFits(arrival.Seconds);
        }
        else
        {
            _decoder.Break();
        }

        PushDecoded(observer);
        SayRate();
        return true;
    }

    private void PushDecoded(IObserver<SampleBlock> observer)
    {
        while (_decoder.TakeBlock() is { } block)
        {
            observer.OnNext(block);
        }
    }

    // A wrong baud rate or layout, which silence does not tell.
    private void SayWhereNothingFits(double seconds)
    {
        _firstByteSeconds ??= seconds;
        if (!_hasSaidNothingFits && seconds - _firstByteSeconds >= LatestFrameSeconds && _decoder.Tally.Samples == 0)
        {
            _hasSaidNothingFits = true;
            _say?.Invoke($"{_port}: bytes come, but no frame of the layout is among them. Check baud rate and framing in the layout.");
        }
    }

    private void SayRate()
    {
        if (!_hasSaidRate && ClockDrift.Words(_port, Header.Rate, _decoder.Tally) is { } words)
        {
            _hasSaidRate = true;
            _say?.Invoke(words);
        }
    }
}
