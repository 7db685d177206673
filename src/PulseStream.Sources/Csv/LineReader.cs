using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>
/// Splits a stream of bytes into lines that end in LF or CRLF, in bounded memory, handing each on as soon as it is there.
/// A general CSV library was tried for this and fills its buffer before it hands on the first row, so a slow pipe showed
/// nothing until it ended; it also takes a lone CR for a line end and gives up at a long line where one row would do.
/// </summary>
internal sealed class LineReader(Stream stream, string source)
{
    /// <summary>Bytes of the longest line that is read; far beyond any real row, and what keeps memory bounded.</summary>
    public const int LongestLine = 64 * 1024;

    /// <summary>Bytes that can be held for a second reading: ten seconds of any real recording.</summary>
    private const int LongestHold = 1024 * 1024;

    // A crash may leave a stretch of zero bytes in a good file. Past this no more rows will come.
    private const long LongestSkip = 64L * 1024 * 1024;

    private byte[] _buffer = new byte[2 * LongestLine];
    private int _start;
    private int _scanned;
    private int _end;
    private bool _ended;
    private int _holdStart = -1;
    private long _holdLine;

    /// <summary>Number of the line read last; the first line is 1.</summary>
    public long LineNumber { get; private set; }

    /// <summary>What has been read and not yet handed on as lines.</summary>
    public ReadOnlySpan<byte> Waiting => _buffer.AsSpan(_start, _end - _start);

    private bool Holding => _holdStart >= 0;

    /// <summary>Keeps what follows, so that <see cref="Rewind"/> can come back here.</summary>
    public void Hold() => (_holdStart, _holdLine) = (_start, LineNumber);

    /// <summary>Goes back to where <see cref="Hold"/> was called.</summary>
    public void Rewind()
    {
        (_start, _scanned, LineNumber) = (_holdStart, _holdStart, _holdLine);
        _holdStart = -1;
    }

    /// <summary>Passes whole lines of <see cref="Waiting"/>, which have been read there.</summary>
    /// <param name="length">Bytes with the line ends.</param>
    /// <param name="lines">How many lines that are.</param>
    public void Pass(int length, int lines)
    {
        _start += length;
        _scanned = Math.Max(_scanned, _start);
        LineNumber += lines;
    }

    /// <summary>The next line without its end, valid until the next call.</summary>
    /// <returns>
    /// <see cref="LineKind.End"/> at the end, on cancellation, and while holding where no more can be held. A line that is
    /// too long has been skipped, except the first: without a header nothing after it is of use.
    /// </returns>
    public LineKind TryRead(CancellationToken cancel, out ReadOnlySpan<byte> line)
    {
        while (true)
        {
            var at = _buffer.AsSpan(_scanned, _end - _scanned).IndexOf((byte)'\n');
            var length = (at < 0 ? _end : _scanned + at) - _start;
            if (length > LongestLine)
            {
                line = default;
                return Holding ? LineKind.End : LineNumber == 0 ? LineKind.TooLong : SkipLine(cancel);
            }

            if (at >= 0)
            {
                return Deliver(length, endLength: 1, out line);
            }

            _scanned = _end;
            if (!Fill(cancel))
            {
                line = default;
                return _ended && length > 0 ? Deliver(length, endLength: 0, out line) : LineKind.End;
            }
        }
    }

    private LineKind Deliver(int length, int endLength, out ReadOnlySpan<byte> line)
    {
        line = _buffer.AsSpan(_start, length);
        line = line.EndsWith("\r"u8) ? line[..^1] : line;
        _start += length + endLength;
        _scanned = _start;
        LineNumber++;
        return LineKind.Line;
    }

    private LineKind SkipLine(CancellationToken cancel)
    {
        var skipped = 0L;
        while (true)
        {
            var at = _buffer.AsSpan(_start, _end - _start).IndexOf((byte)'\n');
            skipped += at < 0 ? _end - _start : at;
            if (skipped > LongestSkip)
            {
                throw new BadInputException(
                    $"{source}, line {LineNumber + 1}",
                    $"no line end within {LongestSkip} bytes, so no rows of a recording can follow",
                    "Cut the recording off before this line and run again");
            }

            _start = at < 0 ? _end : _start + at + 1;
            _scanned = _start;
            if (at >= 0 || !Fill(cancel))
            {
                LineNumber++;
                return LineKind.TooLong;
            }
        }
    }

    private bool Fill(CancellationToken cancel)
    {
        if (_ended || (_end == _buffer.Length && !MakeRoom()))
        {
            return false;
        }

        var count = Read(_buffer.AsMemory(_end), cancel);
        _ended = count == 0;
        _end += count ?? 0;
        return count > 0;
    }

    private bool MakeRoom()
    {
        var keep = Holding ? _holdStart : _start;
        if (keep > 0)
        {
            _buffer.AsSpan(keep, _end - keep).CopyTo(_buffer);
            (_start, _scanned, _end) = (_start - keep, _scanned - keep, _end - keep);
            _holdStart = Holding ? 0 : _holdStart;
            return true;
        }

        if (_buffer.Length >= LongestHold)
        {
            return false;
        }

        Array.Resize(ref _buffer, 2 * _buffer.Length);
        return true;
    }

    private int? Read(Memory<byte> room, CancellationToken cancel)
    {
        try
        {
            // A pipe may be silent for long: waiting for it must end when the person wants to.
            return cancel.IsCancellationRequested ? null
                : stream.CanSeek ? stream.Read(room.Span)
                : stream.ReadAsync(room, cancel).AsTask().WaitAsync(cancel).GetAwaiter().GetResult();
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            return null;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw CsvFailures.Unreadable(source, problem);
        }
    }
}
