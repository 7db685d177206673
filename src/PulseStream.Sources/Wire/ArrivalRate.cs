namespace PulseStream.Sources.Wire;

/// <summary>
/// How many samples a second arrive: the least-squares slope of sample index over arrival time since the line was last
/// opened. Arrival jitters by milliseconds and is never early, which a fit over a minute makes small.
/// </summary>
/// <param name="statedHz">The layout's rate.</param>
internal sealed class ArrivalRate(double statedHz)
{
    /// <summary>Further off than this, in percent, it is no clock but a player.</summary>
    public const double PlayerPercent = 5;

    // A speed good enough to tell how long a gap was.
    private const double SpeedSeconds = 1;

    // 10 ms of jitter in 60 s is 0.02 %, a small part of the 0.5 % that are said.
    private const double ClockSeconds = 60;

    private double _firstSeconds = double.NaN;
    private long _firstIndex;
    private double _lastSeconds;
    private double _n;
    private double _sumT;
    private double _sumI;
    private double _sumTt;
    private double _sumTi;
    private double? _speedHz;

    /// <summary>The instrument's rate by our clock; null before a minute has passed, and of a player.</summary>
    public double? ClockHz { get; private set; }

    /// <summary>By what a gap in time becomes samples: the stated rate, or that of a player.</summary>
    public double GapHz => _speedHz is { } hz && IsPlayer(hz) ? hz : statedHz;

    public void Add(double seconds, long index)
    {
        if (double.IsNaN(_firstSeconds))
        {
            (_firstSeconds, _firstIndex) = (seconds, index);
        }

        _lastSeconds = seconds;
        var (t, i) = (seconds - _firstSeconds, (double)(index - _firstIndex));
        _n++;
        _sumT += t;
        _sumI += i;
        _sumTt += t * t;
        _sumTi += t * i;
    }

    /// <summary>Takes stock of what has been added; a few times a second is enough.</summary>
    public void Estimate()
    {
        var span = _lastSeconds - _firstSeconds;
        if (!(span >= SpeedSeconds))
        {
            return;
        }

        var hz = ((_n * _sumTi) - (_sumT * _sumI)) / ((_n * _sumTt) - (_sumT * _sumT));
        if (!(hz > 0) || !double.IsFinite(hz))
        {
            return;
        }

        _speedHz = hz;
        if (span >= ClockSeconds)
        {
            ClockHz = IsPlayer(hz) ? null : hz;
        }
    }

    /// <summary>Begins anew after a gap; what was known stays.</summary>
    public void Restart() => (_firstSeconds, _n, _sumT, _sumI, _sumTt, _sumTi) = (double.NaN, 0, 0, 0, 0, 0);

    private bool IsPlayer(double hz) => Math.Abs(hz - statedHz) > statedHz * PlayerPercent / 100;
}
