namespace PulseStream.Accuracy.Runs;

/// <summary>When a reference counts as steady.</summary>
/// <param name="Seconds">How long it has to be.</param>
/// <param name="Spread">Largest value less smallest, at most.</param>
public sealed record PlateauRule(double Seconds, double Spread)
{
    /// <summary>Half a minute within 2 points, or within 6 beats a minute.</summary>
    /// <param name="quantity">What is compared.</param>
    public static PlateauRule Usual(Quantity quantity) => new(30, quantity == Quantity.Saturation ? 2 : 6);
}
