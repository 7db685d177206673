namespace PulseStream.Archive.Columns;

/// <summary>
/// A file whose asynchronous calls are done when they return. The runtime hands those of a plain file to another thread; the
/// Parquet library makes many small ones, and who waits for each of them pays for two changes of thread every time.
/// </summary>
/// <param name="file">Disposed with this.</param>
internal sealed class InlineFile(FileStream file) : Stream
{
    public override bool CanRead => file.CanRead;

    public override bool CanSeek => file.CanSeek;

    public override bool CanWrite => file.CanWrite;

    public override long Length => file.Length;

    public override long Position
    {
        get => file.Position;
        set => file.Position = value;
    }

    public override int Read(Span<byte> buffer) => file.Read(buffer);

    public override int Read(byte[] buffer, int offset, int count) => file.Read(buffer, offset, count);

    public override int ReadByte() => file.ReadByte();

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        Task.FromResult(file.Read(buffer, offset, count));

    public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
        ValueTask.FromResult(file.Read(buffer.Span));

    public override void Write(ReadOnlySpan<byte> buffer) => file.Write(buffer);

    public override void Write(byte[] buffer, int offset, int count) => file.Write(buffer, offset, count);

    public override void WriteByte(byte value) => file.WriteByte(value);

    public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken)
    {
        file.Write(buffer, offset, count);
        return Task.CompletedTask;
    }

    public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default)
    {
        file.Write(buffer.Span);
        return ValueTask.CompletedTask;
    }

    public override void Flush() => file.Flush();

    public override Task FlushAsync(CancellationToken cancellationToken)
    {
        file.Flush();
        return Task.CompletedTask;
    }

    /// <summary>Waits until the disk has everything written.</summary>
    public void FlushToDisk() => file.Flush(flushToDisk: true);

    public override long Seek(long offset, SeekOrigin origin) => file.Seek(offset, origin);

    public override void SetLength(long value) => file.SetLength(value);

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            file.Dispose();
        }

        base.Dispose(disposing);
    }
}
