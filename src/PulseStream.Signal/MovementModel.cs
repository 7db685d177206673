using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// How a movement goes on in two lights, as far as it can be told from what both did in the last half second. What cannot be told
/// is white in each and free of the other's, whatever colours, proportions and delays the movement has.
/// </summary>
/// <remarks>
/// Source: autoregression of several series, fitted by least squares (H. Lütkepohl, New Introduction to Multiple Time Series
/// Analysis, 2005, section 3.2, from memory); red is told from infrared of the same moment as well, so that what is left of both has no covariance.
/// </remarks>
internal sealed class MovementModel
{
    // What was smoothed to 8 Hz is told whole by as many points a second.
    private const double LeastPointRateHz = 16;

    // Half a second at that rate: two movements are told apart that are some two hertz from each other.
    private const int Order = 8;
    private const int InfraredColumns = 2 * Order;
    private const int RedColumns = InfraredColumns + 1;

    // A light that the other one tells whole would be weighed without end.
    private const double LeastLeft = 1e-6;
    private readonly int room;
    private readonly LeastSquares infraredSquares = new(InfraredColumns);
    private readonly LeastSquares redSquares = new(RedColumns);
    private readonly double[] columns;
    private readonly double[] red;
    private readonly Vector128<double>[] ofInfrared = new Vector128<double>[Order];
    private readonly Vector128<double>[] ofRed = new Vector128<double>[Order];
    private double infraredInRed;
    private double infraredScale;
    private double redScale;

    public MovementModel(SignalDesign design)
    {
        PointBins = Math.Max(1, (int)(design.BinRateHz / LeastPointRateHz));
        room = (design.LongestWindowBins / PointBins) + 1;
        columns = new double[room * RedColumns];
        red = new double[room];
    }

    /// <summary>Bins from one point to the next that tells anything new.</summary>
    public int PointBins { get; }

    /// <summary>Points that were learned from.</summary>
    public int PointCount { get; private set; }

    /// <summary>Bins at the beginning of a window that are told from nothing.</summary>
    public int LeadBins => Order * PointBins;

    /// <summary>Logarithm of the likelihood of what was learned from, but for a constant.</summary>
    public double LogLikelihood => PointCount * (Math.Log(infraredScale) + Math.Log(redScale));

    /// <summary>Learns how a movement goes on.</summary>
    /// <param name="movement">Infrared and red in turn.</param>
    /// <param name="load">White light that both lights are thought to have besides, as a power: what only small differences tell is then not told.</param>
    public void Learn(ReadOnlySpan<double> movement, double load = 0)
    {
        load *= movement.Length / 2 / PointBins;
        var pairs = MemoryMarshal.Cast<double, Vector128<double>>(movement);
        var count = 0;
        for (var n = LeadBins; n < pairs.Length; n += PointBins, count++)
        {
            for (var k = 0; k < Order; k++)
            {
                var former = pairs[n - ((k + 1) * PointBins)];
                columns[(2 * k * room) + count] = former[0];
                columns[(((2 * k) + 1) * room) + count] = former[1];
            }

            columns[(InfraredColumns * room) + count] = pairs[n][0];
            red[count] = pairs[n][1];
        }

        PointCount = count;
        infraredScale = Fit(infraredSquares, columns.AsSpan(InfraredColumns * room, count), InfraredColumns, ofInfrared, load);
        redScale = Fit(redSquares, red.AsSpan(0, count), RedColumns, ofRed, load);
        infraredInRed = redSquares.Solution[InfraredColumns];
    }

    /// <summary>Takes away from a white shape what could as well be a change of how the movement goes on.</summary>
    /// <param name="points">Infrared's points, then red's.</param>
    public void TakeAway(Span<double> points)
    {
        TakeAway(infraredSquares, points[..PointCount]);
        TakeAway(redSquares, points[PointCount..]);
    }

    /// <summary>What could not be told of two lights, in units of its own deviation; nothing of the first <see cref="LeadBins"/>.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="white">Where it is left; as long.</param>
    public void Whiten(ReadOnlySpan<double> pairs, Span<double> white)
    {
        var lights = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        white[..(2 * LeadBins)].Clear();
        for (var n = LeadBins; n < lights.Length; n++)
        {
            Vector128<double> infrared = default, both = default;
            for (var k = 0; k < Order; k++)
            {
                var former = lights[n - ((k + 1) * PointBins)];
                infrared += ofInfrared[k] * former;
                both += ofRed[k] * former;
            }

            white[2 * n] = infraredScale * (lights[n][0] - Vector128.Sum(infrared));
            white[(2 * n) + 1] = redScale * (lights[n][1] - (infraredInRed * lights[n][0]) - Vector128.Sum(both));
        }
    }

    private void TakeAway(LeastSquares squares, Span<double> values)
    {
        squares.SolveAgain(columns, room, values);
        for (var k = 0; k < squares.Solution.Length; k++)
        {
            var share = squares.Solution[k];
            var column = columns.AsSpan(k * room, values.Length);
            for (var n = 0; n < values.Length; n++)
            {
                values[n] -= share * column[n];
            }
        }
    }

    private double Fit(LeastSquares squares, ReadOnlySpan<double> values, int columnCount, Span<Vector128<double>> weights, double load)
    {
        var power = Projection.Dot(values, values);
        var told = squares.Solve(columns, room, columnCount, values, load);
        for (var k = 0; k < Order; k++)
        {
            weights[k] = Vector128.Create(squares.Solution[2 * k], squares.Solution[(2 * k) + 1]);
        }

        return 1 / Math.Sqrt(Math.Max(power - told, LeastLeft * power) / Math.Max(1, values.Length - columnCount));
    }
}
