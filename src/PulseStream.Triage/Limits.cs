namespace PulseStream.Triage;

/// <summary>Guards at the public edge: a number outside is a bug of the caller, who checks what people type.</summary>
internal static class Limits
{
    public static double Percent(double value, string name) => value is >= 0 and <= 100
        ? value
        : throw new ArgumentOutOfRangeException(name, value, "A saturation lies in 0 to 100 %.");

    public static double NotNegative(double value, string name) => value >= 0 && double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, value, "The number is finite and 0 or more.");
}
