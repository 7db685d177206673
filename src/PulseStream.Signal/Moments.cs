namespace PulseStream.Signal;

/// <summary>Running mean and variance about the first value, which keeps small swings on a large level exact.</summary>
internal sealed class Moments
{
    private double origin;
    private double sum;
    private double squares;

    /// <summary>Values added.</summary>
    public int Count { get; private set; }

    /// <summary>Mean; NaN without values.</summary>
    public double Mean => Count > 0 ? origin + (sum / Count) : double.NaN;

    /// <summary>Variance (over n); NaN without values.</summary>
    public double Variance => Count > 0 ? Math.Max(0, (squares / Count) - (sum / Count * (sum / Count))) : double.NaN;

    /// <summary>Adds a value.</summary>
    public void Add(double value)
    {
        if (Count++ == 0)
        {
            origin = value;
        }

        var difference = value - origin;
        sum += difference;
        squares += difference * difference;
    }

    /// <summary>Forgets all values.</summary>
    public void Restart()
    {
        Count = 0;
        sum = 0;
        squares = 0;
    }
}
