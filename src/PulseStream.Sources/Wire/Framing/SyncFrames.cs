using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Wire.Framing;

/// <summary>
/// Frames of one length that open with the same bytes. Where one fails, the next is sought from its second byte on, so
/// that a frame behind a cut or doubled byte is found. Without a checksum a frame counts only if another opening follows
/// it: a lost or added byte would shift values unseen. When that opening comes does not matter.
/// </summary>
internal sealed class SyncFrames(BinaryLayout layout, FrameReader frames) : FrameFinder
{
    // Room for some frames, so that what is left is moved down seldom.
    private readonly byte[] _room = new byte[8 * (layout.Length + layout.Sync.Length)];
    private readonly double[] _cameSeconds = new double[8 * (layout.Length + layout.Sync.Length)];
    private readonly int _lookAhead = frames.IsProven ? 0 : layout.Sync.Length;
    private int _start;
    private int _end;
    private long _skipped;
    private bool _hasFailed;
    private bool _isOpening = true;

    public override void Read(ReadOnlySpan<byte> bytes, double arrivalSeconds)
    {
        while (bytes.Length > 0)
        {
            MakeRoom();
            var part = bytes[..Math.Min(bytes.Length, _room.Length - _end)];
            part.CopyTo(_room.AsSpan(_end));
            _cameSeconds.AsSpan(_end, part.Length).Fill(arrivalSeconds);
            _end += part.Length;
            bytes = bytes[part.Length..];
            Search(_lookAhead);
        }
    }

    public override void Pause() => Search(lookAhead: 0);

    public override void Break()
    {
        Search(lookAhead: 0);
        Skip(_end - _start);
        EndOfGarbage();
        _isOpening = true;
    }

    private ReadOnlySpan<byte> Rest => _room.AsSpan(_start, _end - _start);

    private void MakeRoom()
    {
        Rest.CopyTo(_room);
        _cameSeconds.AsSpan(_start, _end - _start).CopyTo(_cameSeconds);
        (_start, _end) = (0, _end - _start);
    }

    private void Search(int lookAhead)
    {
        while (true)
        {
            var at = NextSync();
            Skip(at);
            if (Rest.Length < layout.Length + lookAhead)
            {
                return;
            }

            var frame = Rest[..layout.Length];
            if (frames.Holds(frame) && Rest.Slice(layout.Length, lookAhead).SequenceEqual(layout.Sync.AsSpan(0, lookAhead)))
            {
                EndOfGarbage();
                _isOpening = false;
                frames.Take(frame, _cameSeconds[_start + layout.Length - 1]);
                _start += layout.Length;
            }
            else
            {
                _hasFailed = true;
                Skip(1);
            }
        }
    }

    // Where the next opening is, or what may become one at the end.
    private int NextSync()
    {
        var at = Rest.IndexOf(layout.Sync);
        if (at >= 0)
        {
            return at;
        }

        for (at = Math.Max(0, Rest.Length - layout.Sync.Length + 1); at < Rest.Length; at++)
        {
            if (layout.Sync.AsSpan().StartsWith(Rest[at..]))
            {
                break;
            }
        }

        return at;
    }

    private void Skip(int bytes)
    {
        _start += bytes;
        _skipped += bytes;
    }

    private void EndOfGarbage()
    {
        if (_skipped > 0 && !(_isOpening && _skipped < layout.Length))
        {
            var lost = (long)Math.Round(_skipped / (double)layout.Length);
            frames.Lose(CauseOf(), Math.Max(1, lost), lost);
        }

        (_skipped, _hasFailed) = (0, false);
    }

    private WireFault CauseOf() => !_hasFailed ? WireFault.Garbage : frames.IsProven ? WireFault.Checksum : WireFault.Length;
}
