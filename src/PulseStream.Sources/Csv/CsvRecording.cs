using System.Reactive.Disposables;
using System.Reactive.Linq;
using PulseStream.Samples;
using PulseStream.Sources.Signals;

namespace PulseStream.Sources.Csv;

/// <summary>
/// A recording in CSV: UTF-8 text, one header line, columns by name. It is read in constant memory, and each block is
/// handed on as soon as its rows are there, from a slow pipe as well.
/// <para>
/// Index 0 is the first value of the column 'sample', whatever that is: a counter that starts at 5000 starts at second 0.
/// Without that column the time since the row before tells the index, without times each row is the next sample. A jump
/// of the counter is that many missing samples; one over more than an hour must be confirmed by the next row, else its
/// row is bad. Bad rows count as missing; one whose number the counter then jumps over counts once.
/// </para>
/// <para>
/// A column 'time_s' gives the rate: at least two and at most ten seconds are read ahead (1 MiB at most), the period is
/// the slope of the times over their longest stretch without gaps, and where a whole or another simple number of hertz
/// lies within its uncertainty, that is the rate. Times with three decimals at 128 Hz so give 128 Hz.
/// </para>
/// <para>Blank lines at the end are no rows. Numbers may have blanks around them.</para>
/// </summary>
public sealed class CsvRecording : Recording
{
    private readonly Stream _stream;
    private readonly CsvBlockReader _reader;
    private bool _subscribed;

    private CsvRecording(Stream stream, string source, CsvOptions options, CancellationToken cancel)
    {
        CheckOptions(options);
        _stream = stream;
        var lines = new LineReader(stream, source);
        var layout = ReadHeader(lines, source, options.Map, cancel);
        if (layout.Unknown.Length > 0)
        {
            options.Say?.Invoke($"{source}: columns ignored: {layout.Unknown}.");
        }

        var scale = FindScale(lines, layout, source, options, cancel);
        // The name alone: a folder may tell who somebody is, and the header is archived.
        Header = new RecordingHeader(Path.GetFileName(source), scale.Rate, layout.Columns, options.FullScaleCounts, options.Start);
        _reader = new CsvBlockReader(lines, layout, scale, source, options.Say);
    }

    /// <inheritdoc/>
    public override RecordingHeader Header { get; }

    /// <inheritdoc/>
    public override SampleTally Tally => _reader.Tally;

    /// <summary>Opens a file.</summary>
    /// <param name="path">The file; messages say it as it is given, the header carries its name without folders.</param>
    /// <param name="options">What is known beside the file.</param>
    /// <param name="cancel">Ends the wait for the first rows, where the file is a pipe.</param>
    /// <exception cref="BadInputException">The file or an option cannot be used.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set before the header was known.</exception>
    public static CsvRecording Open(string path, CsvOptions options, CancellationToken cancel = default)
    {
        FileStream stream;
        try
        {
            stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw CsvFailures.Unreadable(path, problem);
        }

        return Open(stream, path, options, cancel);
    }

    /// <summary>Opens a stream, such as standard input; it is closed with the recording, and here where opening fails.</summary>
    /// <param name="stream">The text; need not be seekable.</param>
    /// <param name="sourceName">What messages and the header call it.</param>
    /// <param name="options">What is known beside the text.</param>
    /// <param name="cancel">Ends the wait for the first rows.</param>
    /// <exception cref="BadInputException">The text or an option cannot be used.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> was set before the header was known.</exception>
    public static CsvRecording Open(Stream stream, string sourceName, CsvOptions options, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(sourceName);
        ArgumentNullException.ThrowIfNull(options);
        try
        {
            return new CsvRecording(stream, sourceName, options, cancel);
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    /// <summary>
    /// The samples in order, in blocks of at most a quarter of a second, pushed by the thread that subscribes before
    /// Subscribe returns. On cancellation it completes with all complete rows received so far; its bad rows are not judged then.
    /// </summary>
    /// <param name="cancel">Ends the stream early, also while it waits for a silent pipe.</param>
    /// <exception cref="BadInputException">Arrives as OnError: more than 5 % bad rows, no good row, or a read error.</exception>
    /// <exception cref="InvalidOperationException">Subscribed a second time: the rows are gone.</exception>
    public override IObservable<SampleBlock> Blocks(CancellationToken cancel) => Observable.Create<SampleBlock>(observer =>
    {
        if (_subscribed)
        {
            throw new InvalidOperationException("A recording can be read once: open it again.");
        }

        _subscribed = true;
        Push(observer, cancel);
        return Disposable.Empty;
    });

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _stream.Dispose();
        }
    }

    private void Push(IObserver<SampleBlock> observer, CancellationToken cancel)
    {
        while (true)
        {
            SampleBlock? block;
            try
            {
                block = _reader.Next(cancel);
            }
            catch (BadInputException problem)
            {
                observer.OnError(problem);
                return;
            }

            if (block is not { } read)
            {
                observer.OnCompleted();
                return;
            }

            // Outside the try: what an observer throws is its own affair.
            observer.OnNext(read);
        }
    }

    private static void CheckOptions(CsvOptions options)
    {
        if (options.RateHz is { } hz && !(hz >= SampleRate.LowestHz && hz <= SampleRate.HighestHz))
        {
            throw CsvFailures.BadOption("--rate", hz, $"{SampleRate.LowestHz} to {SampleRate.HighestHz} Hz");
        }

        if (options.FullScaleCounts is { } counts && !(counts > 0 && double.IsFinite(counts)))
        {
            throw CsvFailures.BadOption("--full-scale", counts, "a count above 0");
        }
    }

    private static CsvLayout ReadHeader(LineReader lines, string source, SignalMap map, CancellationToken cancel)
    {
        var kind = lines.TryRead(cancel, out var line);
        cancel.ThrowIfCancellationRequested();
        return kind switch
        {
            LineKind.Line => CsvLayout.Read(line, source, map),
            LineKind.TooLong => throw CsvFailures.HeaderTooLong(source),
            _ => throw CsvFailures.Empty(source),
        };
    }

    private static TimeScale FindScale(LineReader lines, CsvLayout layout, string source, CsvOptions options, CancellationToken cancel)
    {
        if (!layout.HasTime)
        {
            return options.RateHz is { } hz
                ? new TimeScale(new SampleRate(hz), 0)
                : throw CsvFailures.NoRate(source, "there is no column 'time_s'");
        }

        var (fit, rows) = RateLookAhead.Read(lines, layout, cancel);
        return (fit, rows, options.RateHz) switch
        {
            ({ } found, _, _) => new TimeScale(RateOf(found, source, options), found.RoundingSeconds),
            (null, 0, _) => throw CsvFailures.NoRows(source),
            (null, _, { } hz) => new TimeScale(new SampleRate(hz), 0),
            _ => throw CsvFailures.NoRate(source, $"in the first {rows} rows no two good ones step forward in 'time_s'"),
        };
    }

    private static SampleRate RateOf(RateFit fit, string source, CsvOptions options)
    {
        var hz = fit.SimplestHz();
        if (!SampleRate.IsMeasured(hz))
        {
            throw CsvFailures.RateOutOfRange(source, hz);
        }

        if (options.RateHz is { } told && Math.Abs(told - hz) > fit.Rate.Uncertainty)
        {
            options.Say?.Invoke($"{source}: column 'time_s' tells {hz} Hz, so --rate {told} is not used.");
        }

        return new SampleRate(hz);
    }
}
