namespace PulseStream.Course;

/// <summary>
/// A cumulative sum of standard scores against a shift in one direction (Page 1954): what exceeds the allowance adds up,
/// and beyond the limit the level has shifted.
/// </summary>
/// <param name="allowance">Half the shift it is quickest for, in standard deviations.</param>
/// <param name="limit">In standard deviations.</param>
internal sealed class Cusum(double allowance, double limit)
{
    private double _sum;

    /// <summary>Scores since the sum was last zero.</summary>
    public int Run { get; private set; }

    /// <summary>Whether the limit is exceeded.</summary>
    public bool IsBeyond => _sum > limit;

    /// <summary>Adds a score, positive in the direction that is watched.</summary>
    public void Add(double score)
    {
        _sum = Math.Max(0, _sum + score - allowance);
        Run = _sum > 0 ? Run + 1 : 0;
    }
}
