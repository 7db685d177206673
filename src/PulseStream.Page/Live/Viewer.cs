using System.Threading.Channels;

namespace PulseStream.Page.Live;

/// <summary>One open page: what it has yet to be sent, of bounded length.</summary>
internal sealed class Viewer : IDisposable
{
    // Five seconds of live events at least. A page that is further behind would show the past as the present.
    public const int LongestQueue = 5 * WaveCutter.MostUpdatesPerSecond;

    private readonly Channel<PageEvent> _queue = Channel.CreateBounded<PageEvent>(
        new BoundedChannelOptions(LongestQueue) { SingleReader = true, FullMode = BoundedChannelFullMode.Wait });

    private readonly CancellationTokenSource _dropped = new();
    private readonly IReadOnlyList<PageEvent> _first;

    public Viewer(IReadOnlyList<PageEvent> first) => _first = first;

    /// <summary>Set when this viewer was too slow: whatever is being sent to it is given up.</summary>
    public CancellationToken Dropped => _dropped.Token;

    /// <summary>The present state, then what is told while it is read; ends when the viewer is dropped or nothing more comes.</summary>
    public async IAsyncEnumerable<PageEvent> Events([System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancel)
    {
        foreach (var told in _first)
        {
            yield return told;
        }

        await foreach (var told in _queue.Reader.ReadAllAsync(cancel))
        {
            yield return told;
        }
    }

    /// <summary>Queues an event without waiting; false where there is no room left, and then for ever.</summary>
    public bool TryTell(PageEvent told)
    {
        if (_queue.Writer.TryWrite(told))
        {
            return true;
        }

        _queue.Writer.TryComplete();

        // On another thread: whoever tells must not run what giving up sets off.
        _ = _dropped.CancelAsync();
        return false;
    }

    /// <summary>Nothing more comes; what is queued is still sent.</summary>
    public void End() => _queue.Writer.TryComplete();

    public void Dispose() => _dropped.Dispose();
}
