namespace PulseStream.Signal;

/// <summary>Height of a pulse in percent.</summary>
internal static class Perfusion
{
    /// <summary>Peak to trough over the mean, percent; NaN where the unit is unknown.</summary>
    /// <param name="height">Peak to trough, natural logarithm of light: exp(h) − 1 over the middle of both.</param>
    /// <param name="isPleth">Whether the unit is unknown.</param>
    public static double PercentOf(double height, bool isPleth) => isPleth ? double.NaN : 200 * Math.Tanh(height / 2);
}
