namespace PulseStream.Accuracy.Statistics;

/// <summary>A 95 % interval.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct ConfidenceInterval(double Low, double High)
{
    /// <summary>Whether a value lies within, the ends included.</summary>
    /// <param name="value">The value.</param>
    public bool Contains(double value) => value >= Low && value <= High;

    /// <summary>An interval on both sides of an estimate.</summary>
    /// <param name="estimate">Its middle.</param>
    /// <param name="half">Half its width.</param>
    public static ConfidenceInterval Around(double estimate, double half) => new(estimate - half, estimate + half);
}
