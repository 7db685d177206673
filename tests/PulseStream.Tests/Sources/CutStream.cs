namespace PulseStream.Tests.Sources;

/// <summary>Bytes that arrive in pieces of given lengths, over and over, as from a pipe.</summary>
internal sealed class CutStream(byte[] bytes, int[] cuts) : Stream
{
    private int _at;
    private int _cut;

    public Action<int> BeforeRead { get; init; } = _ => { };

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        BeforeRead(_at);
        var length = Math.Min(Math.Min(cuts[_cut++ % cuts.Length], count), bytes.Length - _at);
        bytes.AsSpan(_at, length).CopyTo(buffer.AsSpan(offset));
        _at += length;
        return length;
    }

    public override void Flush() => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
