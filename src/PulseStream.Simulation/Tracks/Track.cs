namespace PulseStream.Simulation.Tracks;

/// <summary>
/// A value over time: constant, ramps between points, jumps. Before the first point it holds the first value, after the
/// last point the last.
/// </summary>
public sealed class Track
{
    private readonly TrackPoint[] _points;

    internal Track(IEnumerable<TrackPoint> points)
    {
        _points = [.. points];
        Lowest = _points.Min(p => Math.Min(p.Before, p.After));
        Highest = _points.Max(p => Math.Max(p.Before, p.After));
    }

    /// <summary>The smallest value the track ever takes.</summary>
    public double Lowest { get; }

    /// <summary>The largest value the track ever takes.</summary>
    public double Highest { get; }

    /// <summary>The same value all the time.</summary>
    /// <param name="value">In the unit of what is tracked.</param>
    public static Track Constant(double value) => new([new TrackPoint(0, value, value)]);

    /// <summary>One value, then a straight line to another, which it keeps.</summary>
    /// <param name="from">Value until <paramref name="startSeconds"/>.</param>
    /// <param name="to">Value from <paramref name="endSeconds"/> on.</param>
    /// <param name="startSeconds">Start of the line.</param>
    /// <param name="endSeconds">End of the line, later than its start.</param>
    /// <exception cref="ArgumentOutOfRangeException">The end is not after the start.</exception>
    public static Track Ramp(double from, double to, double startSeconds, double endSeconds) => endSeconds > startSeconds
        ? new([new TrackPoint(startSeconds, from, from), new TrackPoint(endSeconds, to, to)])
        : throw new ArgumentOutOfRangeException(nameof(endSeconds), endSeconds, $"A ramp that starts at {startSeconds} s ends later.");

    /// <summary>One value, then at once another.</summary>
    /// <param name="before">Value before the jump.</param>
    /// <param name="after">Value from the jump on.</param>
    /// <param name="atSeconds">Time of the jump.</param>
    public static Track Step(double before, double after, double atSeconds) => new([new TrackPoint(atSeconds, before, after)]);

    /// <summary>The value at a time.</summary>
    /// <param name="seconds">Seconds since the scenario's start.</param>
    public double At(double seconds)
    {
        if (seconds < _points[0].Seconds)
        {
            return _points[0].Before;
        }

        var i = _points.Length - 1;
        while (_points[i].Seconds > seconds)
        {
            i--;
        }

        return i == _points.Length - 1 ? _points[i].After : Between(_points[i], _points[i + 1], seconds);
    }

    private static double Between(in TrackPoint a, in TrackPoint b, double seconds) =>
        a.After + ((b.Before - a.After) * (seconds - a.Seconds) / (b.Seconds - a.Seconds));
}
