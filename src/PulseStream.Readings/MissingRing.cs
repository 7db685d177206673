namespace PulseStream.Readings;

/// <summary>Mean missing share of the last eight seconds.</summary>
internal sealed class MissingRing
{
    private readonly double[] shares = new double[8];
    private int count;

    /// <summary>Adds a second's share and tells the mean; seconds before the start count as whole.</summary>
    public double Add(double share)
    {
        shares[count++ % shares.Length] = share;
        count = count == 2 * shares.Length ? shares.Length : count;
        var sum = 0.0;
        foreach (var value in shares)
        {
            sum += value;
        }

        return sum / shares.Length;
    }
}
