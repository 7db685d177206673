namespace PulseStream.Accuracy;

/// <summary>Limits, names and units of a quantity.</summary>
/// <param name="Name">In options and results: "spo2" or "pulse".</param>
/// <param name="Unit">"%" or "/min".</param>
/// <param name="ErrorUnit">Unit of an error: percentage points or beats a minute.</param>
/// <param name="Lowest">Least value that can be meant.</param>
/// <param name="Highest">Largest value that can be meant.</param>
/// <param name="BandWidth">Width of a band of reference values.</param>
public sealed record QuantityScale(string Name, string Unit, string ErrorUnit, double Lowest, double Highest, double BandWidth)
{
    // No pulse of a person lies beyond it.
    private const double LargestPulse = 350;

    private static readonly QuantityScale Saturation = new("spo2", "%", "points", 0, 100, 10);
    private static readonly QuantityScale PulseRate = new("pulse", "/min", "/min", 0, LargestPulse, 20);

    /// <summary>The scale of a quantity.</summary>
    /// <param name="quantity">Which.</param>
    public static QuantityScale Of(Quantity quantity) => quantity == Quantity.PulseRate ? PulseRate : Saturation;
}
