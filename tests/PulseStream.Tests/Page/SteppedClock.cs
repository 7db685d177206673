namespace PulseStream.Tests.Page;

/// <summary>A clock that a test moves by hand; timers that are due fire while it is moved.</summary>
internal sealed class SteppedClock : TimeProvider
{
    private readonly List<Timer> _timers = [];
    private long _ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => _ticks;

    public override DateTimeOffset GetUtcNow() => new DateTimeOffset(2026, 1, 18, 7, 30, 0, TimeSpan.Zero).AddTicks(_ticks);

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new Timer(callback, state);
        _timers.Add(timer);
        return timer;
    }

    public void Move(TimeSpan time)
    {
        _ticks += time.Ticks;
        _timers.ForEach(timer => timer.Fire());
    }

    private sealed class Timer(TimerCallback callback, object? state) : ITimer
    {
        private bool _isOver;

        public void Fire()
        {
            if (!_isOver)
            {
                callback(state);
            }
        }

        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose() => _isOver = true;

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
