namespace PulseStream.Course;

/// <summary>
/// Scores values against the level of those before them. With a known deviation the scores of a steady person are
/// independent and standard normal, however few values there were (self-starting charts: Hawkins, Technometrics 1987;29:
/// 215), so that the run lengths of the textbook hold from the first days on.
/// </summary>
internal sealed class SteadyLevel(ChangeOptions options)
{
    private double _mean;
    private double _squares;
    private int _count;

    /// <summary>Score of a value in deviations; null while too few are known. The value is known afterwards.</summary>
    public double? Score(double value)
    {
        var score = _count >= options.LearningValues
            ? Math.Clamp((value - _mean) / (Deviation * Math.Sqrt(1 + (1.0 / _count))), -options.MostOfOneValue, options.MostOfOneValue)
            : (double?)null;
        _count++;
        var step = value - _mean;
        _mean += step / _count;
        _squares += step * (value - _mean);
        return score;
    }

    private double Deviation
    {
        get
        {
            var least = options.LeastDeviation * options.LeastDeviation;
            return Math.Sqrt(Math.Max(least, ((options.DeviationWeight * least) + _squares) / (options.DeviationWeight + _count - 1)));
        }
    }
}
