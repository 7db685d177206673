namespace PulseStream.Sources.Live;

/// <summary>The rules of silence. It has no clock: each call tells the time, in seconds of a steady clock.</summary>
/// <param name="giveUpAfterSeconds">How long nothing may come before the device counts as lost for good; null for ever.</param>
internal sealed class LinkWatch(double? giveUpAfterSeconds)
{
    // A pulse oximeter sends tens of times a second: two seconds without a byte are no jitter.
    private const double SilentAfterSeconds = 2;

    // Some adapters stay open and dumb after a short pull: only opening them again brings them back.
    private const double ReopenAfterSeconds = 5;

    private double? _lastByte;
    private double? _lostAt;
    private double _opened;

    public LinkState State { get; private set; } = LinkState.Waiting;

    /// <summary>Seconds since the last byte; 0 before the first.</summary>
    public double SilentSeconds(double now) => now - (_lastByte ?? now);

    public void Open(double now)
    {
        (_opened, _lostAt) = (now, null);
        State = _lastByte is null ? LinkState.Waiting : State == LinkState.Lost ? LinkState.Silent : State;
    }

    public void Receive(double now) => (_lastByte, State) = (now, LinkState.Receiving);

    public void Lose(double now)
    {
        _lostAt ??= now;
        State = LinkState.Lost;
    }

    public LinkAction Tick(double now)
    {
        if (giveUpAfterSeconds is { } limit && now - (_lastByte ?? _lostAt ?? now) >= limit)
        {
            return LinkAction.GiveUp;
        }

        // Before the first byte, silence is waiting.
        if (State == LinkState.Lost || _lastByte is not { } last)
        {
            return LinkAction.None;
        }

        if (now - last >= SilentAfterSeconds)
        {
            State = LinkState.Silent;
        }

        return now - Math.Max(last, _opened) >= ReopenAfterSeconds ? LinkAction.Reopen : LinkAction.None;
    }
}
