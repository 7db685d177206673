using PulseStream.Page.Live;
using Xunit;

namespace PulseStream.Tests.Page;

public sealed class BroadcastTests
{
    private static readonly PageEvent Hello = new(PageNames.Hello, "{}");

    [Fact]
    public async Task EveryViewerIsToldTheSame()
    {
        var broadcast = new Broadcast();
        var viewers = new[] { broadcast.Join(Hello), broadcast.Join(Hello), broadcast.Join(Hello) };

        broadcast.Tell(Second(1));
        broadcast.Tell(Second(2));
        broadcast.End();

        foreach (var viewer in viewers)
        {
            Assert.Equal([Hello, Second(1), Second(2)], await All(viewer));
        }
    }

    [Fact]
    public async Task ASlowViewerIsDroppedAndTheOthersHearOn()
    {
        var broadcast = new Broadcast();
        var slow = broadcast.Join(Hello);
        var heard = new List<PageEvent>();
        var quick = broadcast.Join(Hello);
        await using var listening = quick.Events(TestContext.Current.CancellationToken).GetAsyncEnumerator(TestContext.Current.CancellationToken);
        await listening.MoveNextAsync();

        for (var i = 0; i <= Viewer.LongestQueue; i++)
        {
            broadcast.Tell(Second(i));
            await listening.MoveNextAsync();
            heard.Add(listening.Current);
        }

        Assert.Equal(1, broadcast.ViewerCount);
        Assert.Equal(Viewer.LongestQueue + 1, heard.Count);
        await Task.WhenAny(Task.Delay(Timeout.Infinite, slow.Dropped), Task.Delay(TimeSpan.FromSeconds(10), TestContext.Current.CancellationToken));
        Assert.True(slow.Dropped.IsCancellationRequested);
        Assert.False(quick.Dropped.IsCancellationRequested);
    }

    [Fact]
    public async Task ADroppedViewerIsToldNothingMore()
    {
        var broadcast = new Broadcast();
        var slow = broadcast.Join(Hello);
        for (var i = 0; i < 2 * Viewer.LongestQueue; i++)
        {
            broadcast.Tell(Second(i));
        }

        Assert.Equal(Viewer.LongestQueue + 1, (await All(slow)).Count);
    }

    [Fact]
    public async Task WhoJoinsGetsThePresentStateFirst()
    {
        var broadcast = new Broadcast();
        broadcast.Tell(PageMessage.Link(PageLink.Waiting));
        broadcast.Tell(PageMessage.Link(PageLink.Receiving));
        broadcast.Tell(Second(1));
        broadcast.Tell(new(PageNames.Reading, "{\"spo2\":97}"));
        broadcast.Tell(Second(2));
        var viewer = broadcast.Join(Hello);
        broadcast.Tell(Second(3));
        broadcast.End();

        Assert.Equal(
            [Hello, PageMessage.Link(PageLink.Receiving), new(PageNames.Reading, "{\"spo2\":97}"), Second(2), Second(3)],
            await All(viewer));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public async Task WhoJoinsASilentLineSeesNoNumbersOfBefore(int link)
    {
        var (broadcast, stopped) = (new Broadcast(), PageMessage.Link(PageLink.Receiving + link));
        broadcast.Tell(PageMessage.Link(PageLink.Receiving));
        broadcast.Tell(Second(1));
        broadcast.Tell(stopped);
        var viewer = broadcast.Join(Hello);
        broadcast.End();

        Assert.Equal([Hello, stopped], await All(viewer));
    }

    [Fact]
    public void WhoLeavesIsForgotten()
    {
        var broadcast = new Broadcast();
        broadcast.Leave(broadcast.Join(Hello));
        Assert.Equal(0, broadcast.ViewerCount);
    }

    private static PageEvent Second(int second) => new(PageNames.Second, $"{{\"second\":{second}}}");

    private static async Task<List<PageEvent>> All(Viewer viewer)
    {
        var all = new List<PageEvent>();
        await foreach (var told in viewer.Events(TestContext.Current.CancellationToken))
        {
            all.Add(told);
        }

        return all;
    }
}
