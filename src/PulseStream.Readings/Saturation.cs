namespace PulseStream.Readings;

/// <summary>An SpO2 with its interval, in percent.</summary>
/// <param name="Percent">The estimate, unrounded, 0 to 100.</param>
/// <param name="LowPercent">Lower end of the 95 % interval, 0 to 100: the value that the curve gives for the same blood in noise-free light lies between the ends 95 times in 100. NaN where an instrument has told the value alone.</param>
/// <param name="HighPercent">Upper end of the 95 % interval, 0 to 100, or NaN likewise.</param>
public readonly record struct Saturation(double Percent, double LowPercent, double HighPercent)
{
    /// <summary>Whether the interval is known.</summary>
    public bool HasInterval => !double.IsNaN(LowPercent) && !double.IsNaN(HighPercent);

    /// <summary>The same where the interval is known, else a point: both ends equal the value. No property: a record prints its properties, and this one would print itself.</summary>
    public Saturation OrPoint() => HasInterval ? this : new(Percent, Percent, Percent);

    /// <summary>A value that an instrument has told, without an interval.</summary>
    /// <param name="percent">0 to 100.</param>
    public static Saturation WithoutInterval(double percent) => new(percent, double.NaN, double.NaN);
}
