namespace PulseStream.Sources.Signals;

/// <summary>What the values of one channel need to be stored as whole numbers.</summary>
internal sealed class ChannelRange
{
    // More decimals than this no converter gives.
    private const int MostDecimals = 6;

    // A decimal number times its power of ten is whole up to rounding in the last bits.
    private const double WholeSlack = 1e-6;

    /// <summary>Smallest value; infinite where there is none.</summary>
    public double Min { get; private set; } = double.PositiveInfinity;

    /// <summary>Largest value.</summary>
    public double Max { get; private set; } = double.NegativeInfinity;

    /// <summary>Decimals that make every value whole; as many as are looked at where none does.</summary>
    public int Decimals { get; private set; }

    /// <summary>Whether there was a value.</summary>
    public bool IsKnown => Max >= Min;

    /// <summary>Whether every value is there and is a whole number of 32 bits.</summary>
    public bool IsWhole32 { get; private set; } = true;

    public void Add(double value)
    {
        // Not zero with a minus either: it would read back as another.
        IsWhole32 &= value is >= int.MinValue and <= int.MaxValue && Math.Floor(value) == value && !(value == 0 && double.IsNegative(value));
        if (!double.IsFinite(value))
        {
            return;
        }

        (Min, Max) = (Math.Min(Min, value), Math.Max(Max, value));
        while (Decimals < MostDecimals && !IsWhole(value * Math.Pow(10, Decimals)))
        {
            Decimals++;
        }
    }

    private static bool IsWhole(double scaled) => Math.Abs(scaled - Math.Round(scaled)) <= WholeSlack;
}
