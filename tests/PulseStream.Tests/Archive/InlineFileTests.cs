using PulseStream.Archive.Columns;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed class InlineFileTests
{
    [Fact]
    public async Task WhatIsAskedForLaterIsDoneAtOnce()
    {
        var cancel = TestContext.Current.CancellationToken;
        using var file = new InlineFile(new FileStream(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 4096, FileOptions.DeleteOnClose));
        var bytes = new byte[10_000];
        bytes[^1] = 7;
        var writing = file.WriteAsync(bytes, cancel);
        Assert.True(writing.IsCompletedSuccessfully);
        await writing;
        var flushing = file.FlushAsync(cancel);
        Assert.True(flushing.IsCompletedSuccessfully);
        await flushing;
        file.Position = 0;
        var read = new byte[bytes.Length];
        var reading = file.ReadAsync(read, cancel);
        Assert.True(reading.IsCompletedSuccessfully);
        Assert.Equal(read.Length, await reading);
        Assert.Equal(bytes, read);
    }
}
