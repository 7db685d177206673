namespace PulseStream.Page.Live;

/// <summary>Says how it stands with the line: samples arriving, silence, or what the source says of itself.</summary>
internal sealed class LinkWatch : IDisposable
{
    // Two seconds without a sample is silence; a screen must not go on as if nothing had happened.
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);

    private readonly Lock _gate = new();
    private readonly TimeProvider _clock;
    private readonly Action<PageLink> _say;
    private readonly ITimer _timer;
    private long _lastSampleAt;
    private PageLink _link = PageLink.Waiting;

    /// <summary>Starts with waiting, and says so.</summary>
    public LinkWatch(TimeProvider clock, Action<PageLink> say)
    {
        _clock = clock;
        _say = say;
        _say(_link);
        _timer = clock.CreateTimer(_ => Look(), null, LookEvery, LookEvery);
    }

    /// <summary>Samples have arrived. Those after a loss were on their way when the cable was pulled: only the source says that it is back.</summary>
    public void Saw()
    {
        lock (_gate)
        {
            _lastSampleAt = _clock.GetTimestamp();
            if (_link != PageLink.Lost)
            {
                Say(PageLink.Receiving);
            }
        }
    }

    /// <summary>What the source knows of itself.</summary>
    public void Is(PageLink link)
    {
        lock (_gate)
        {
            Say(link);
        }
    }

    public void Dispose() => _timer.Dispose();

    private void Look()
    {
        lock (_gate)
        {
            if (_link == PageLink.Receiving && _clock.GetElapsedTime(_lastSampleAt) >= Silence)
            {
                Say(PageLink.Silent);
            }
        }
    }

    private void Say(PageLink link)
    {
        if (link != _link && _link != PageLink.Ended)
        {
            _link = link;
            _say(link);
        }
    }
}
