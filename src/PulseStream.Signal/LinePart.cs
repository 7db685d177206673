namespace PulseStream.Signal;

/// <summary>
/// Gives a window the share of its pulse back that went with a line on one of the pulse's own harmonics: R does not need
/// it, beats do.
/// </summary>
internal static class LinePart
{
    // Nearer to R than this, light of this mixture looks like blood and the two cannot be told apart.
    private const double LeastDistance = 0.1;

    /// <summary>Whether light of a mixture can be told from the pulse.</summary>
    /// <param name="ratio">R of the pulse.</param>
    /// <param name="mix">The line's red over its infrared, in the logarithm of light.</param>
    public static bool IsTold(double ratio, double mix) => Math.Abs(mix - ratio) > LeastDistance;

    /// <summary>Leaves of a line only what is pulse, by two equations for each sample: i = p + f and r = R p + M f.</summary>
    /// <param name="whole">The window with its lines, infrared and red in turn; loses f.</param>
    /// <param name="without">The same without its lines.</param>
    /// <param name="ratio">R of the pulse.</param>
    /// <param name="mix">M, the line's red over its infrared.</param>
    public static void LeavePulse(Span<double> whole, ReadOnlySpan<double> without, double ratio, double mix)
    {
        for (var n = 0; n + 1 < whole.Length; n += 2)
        {
            var infrared = whole[n] - without[n];
            var red = whole[n + 1] - without[n + 1];
            var pulse = ((mix * infrared) - red) / (mix - ratio);
            whole[n] = without[n] + pulse;
            whole[n + 1] = without[n + 1] + (ratio * pulse);
        }
    }

    /// <summary>Root mean square of the infrared of a window.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    public static double SizeOf(ReadOnlySpan<double> pairs) => Math.Sqrt(RatioSums.Over(pairs).Infrared / (pairs.Length / 2));
}
