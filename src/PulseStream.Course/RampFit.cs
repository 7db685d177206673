namespace PulseStream.Course;

/// <summary>Where a change began and ended: one level, a straight way, another level, by least squares.</summary>
/// <param name="From">Index of the last value of the first level.</param>
/// <param name="To">Index of the first value of the second level.</param>
/// <param name="SizePoints">Second level minus first.</param>
internal readonly record struct RampFit(int From, int To, double SizePoints)
{
    /// <summary>Fits values [first, end), with the way between <paramref name="earliest"/> and the last value.</summary>
    public static RampFit Of(IReadOnlyList<CoursePoint> points, int first, int earliest, int latest, int end)
    {
        var (best, least) = (default(RampFit), double.PositiveInfinity);
        for (var from = earliest; from <= latest; from++)
        {
            for (var to = from + 1; to < end; to++)
            {
                var (size, squares) = Fit(points, first, end, from, to);

                // Strictly better: of equal ways the shortest counts.
                if (squares < least - 1e-9)
                {
                    (best, least) = (new RampFit(from, to, size), squares);
                }
            }
        }

        return best;
    }

    // Value = level + size × way gone, with the way from 0 to 1: a straight line in one variable.
    private static (double Size, double Squares) Fit(IReadOnlyList<CoursePoint> points, int first, int end, int from, int to)
    {
        var (begin, length) = (points[from].Time, (points[to].Time - points[from].Time).TotalHours);
        var (n, sw, sww, sy, swy, syy) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = first; i < end; i++)
        {
            var way = i <= from ? 0 : i >= to ? 1 : (points[i].Time - begin).TotalHours / length;
            var value = points[i].Spo2Percent - points[first].Spo2Percent;
            (n, sw, sww, sy, swy, syy) = (n + 1, sw + way, sww + (way * way), sy + value, swy + (way * value), syy + (value * value));
        }

        var (across, along) = (sww - (sw * sw / n), swy - (sw * sy / n));
        var size = across > 0 ? along / across : 0;
        return (size, syy - (sy * sy / n) - (size * along));
    }
}
