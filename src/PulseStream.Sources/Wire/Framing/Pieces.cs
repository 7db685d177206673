namespace PulseStream.Sources.Wire.Framing;

/// <summary>Cuts bytes at a delimiter that no frame contains: the frame behind any damage is whole again.</summary>
/// <param name="delimiter">Ends each piece.</param>
/// <param name="longest">A longer piece is refused without being kept.</param>
/// <param name="take">Hears each piece.</param>
/// <param name="lose">Hears of each refused piece.</param>
/// <param name="skipsCutPiece">Whether the first piece after the line was opened again is dropped: nothing proves that it is whole.</param>
internal sealed class Pieces(byte delimiter, int longest, PieceTaker take, Action<WireFault> lose, bool skipsCutPiece) : FrameFinder
{
    private readonly byte[] _piece = new byte[longest];
    private int _length;

    // A delimiter may open the next piece instead of ending this one: when it comes says nothing.
    private double _lastByteSeconds;
    private bool _isTooLong;
    private bool _isOpening = true;
    private bool _isSkipping;

    public override void Read(ReadOnlySpan<byte> bytes, double arrivalSeconds)
    {
        while (bytes.IndexOf(delimiter) is var at && at >= 0)
        {
            Add(bytes[..at], arrivalSeconds);
            End();
            bytes = bytes[(at + 1)..];
        }

        Add(bytes, arrivalSeconds);
    }

    public override void Break()
    {
        if (_length > 0 && !_isOpening)
        {
            lose(WireFault.Length);
        }

        (_length, _isTooLong, _isOpening, _isSkipping) = (0, false, true, skipsCutPiece);
    }

    private void Add(ReadOnlySpan<byte> bytes, double arrivalSeconds)
    {
        _lastByteSeconds = bytes.Length > 0 ? arrivalSeconds : _lastByteSeconds;
        _isTooLong |= bytes.Length > longest - _length;
        if (!_isTooLong)
        {
            bytes.CopyTo(_piece.AsSpan(_length));
            _length += bytes.Length;
        }
    }

    private void End()
    {
        if (_length == 0 && !_isTooLong)
        {
            return;
        }

        var fault = _isSkipping ? WireFault.None : _isTooLong ? WireFault.Length : take(_piece.AsSpan(0, _length), _lastByteSeconds);
        if (fault != WireFault.None && !_isOpening)
        {
            lose(fault);
        }

        (_length, _isTooLong, _isOpening, _isSkipping) = (0, false, false, false);
    }
}
