namespace PulseStream.Cli;

/// <summary>Standard output, gathered until flushed; once nobody reads it any more, what is written is dropped in silence.</summary>
internal sealed class ResultStream(Stream output) : Stream
{
    private const int Gathered = 64 * 1024;

    // EPIPE, errno-base.h of Linux and errno.h of macOS; ERROR_NO_DATA of winerror.h as a result code.
    private const int BrokenPipe = 32;
    private const int BrokenPipeOnWindows = unchecked((int)0x800700E8);

    private readonly BufferedStream _gathering = new(output, Gathered);

    /// <summary>Whether the reader has gone, as `| head -3` does after three lines.</summary>
    public bool HasLostReader { get; private set; }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (HasLostReader)
        {
            return;
        }

        try
        {
            _gathering.Write(buffer);
        }
        catch (IOException e) when (IsBrokenPipe(e))
        {
            HasLostReader = true;
        }
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Flush()
    {
        if (HasLostReader)
        {
            return;
        }

        try
        {
            _gathering.Flush();
        }
        catch (IOException e) when (IsBrokenPipe(e))
        {
            HasLostReader = true;
        }
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    private static bool IsBrokenPipe(IOException e) => e.HResult is BrokenPipe or BrokenPipeOnWindows;
}
