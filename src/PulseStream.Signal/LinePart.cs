namespace PulseStream.Signal;

/// <summary>
/// Gives a window the share of its pulse back that went with a line on one of the pulse's own harmonics: R does not need
/// it, beats do.
/// </summary>
internal static class LinePart
{
    /// <summary>Share of the periodicity that a window has to keep when its pulse is put back: a pulse without one of its harmonics repeats nearly as well.</summary>
    public const double LeastPeriodicityShare = 0.85;

    // Nearer to R than this, light of this mixture looks like blood: noise would come back thirty times enlarged.
    private const double LeastDistance = 0.03;

    /// <summary>Red over infrared, in the logarithm of light, of what adds the same counts to both: each is divided by its own light.</summary>
    /// <param name="level">Logarithms of both lights.</param>
    public static double MixOfRoomLight(in Bin level) => Math.Exp(level.Infrared - level.Red);

    /// <summary>Whether a line is as many counts of either light: of one size, not of one phase, because channels are sampled one after the other and mains light moves on in between.</summary>
    /// <param name="inInfrared">Its cosine and sine in infrared, natural logarithm of light.</param>
    /// <param name="inRed">The same in red.</param>
    /// <param name="level">Logarithms of both lights.</param>
    public static bool IsEqualInCounts((double Cosine, double Sine) inInfrared, (double Cosine, double Sine) inRed, in Bin level)
    {
        const double equalShare = 0.25;
        var infrared = Size(inInfrared) * Math.Exp(level.Infrared);
        var red = Size(inRed) * Math.Exp(level.Red);
        return Math.Abs(infrared - red) < equalShare * Math.Max(infrared, red);
    }

    /// <summary>Whether a period is another one or a multiple of it: a pulse that lost its first wave to a line repeats sooner, and light that is no pulse brings a period of its own.</summary>
    /// <param name="periodSeconds">Period with the pulse put back, s.</param>
    /// <param name="withoutSeconds">Period without the line, s.</param>
    public static bool IsMultiple(double periodSeconds, double withoutSeconds)
    {
        const double sameShare = 0.06;
        var times = periodSeconds / withoutSeconds;
        return Math.Abs(times - Math.Max(1, Math.Round(times))) < sameShare * times;
    }

    /// <summary>Whether lines are one that is not quite steady: what is left of it lies beside it. What is slower than the pulse is breathing.</summary>
    /// <param name="hertz">Their frequencies, Hz.</param>
    /// <param name="windowSeconds">Length of the window, s.</param>
    /// <param name="periodSeconds">Period of the pulse, s.</param>
    public static bool IsOneLine(ReadOnlySpan<double> hertz, int windowSeconds, double periodSeconds)
    {
        const double resolutions = 2;
        const double slowerShare = 0.8;
        var one = double.NaN;
        foreach (var hz in hertz)
        {
            if (hz * periodSeconds < slowerShare)
            {
                continue;
            }

            one = double.IsNaN(one) ? hz : one;
            if (Math.Abs(hz - one) * windowSeconds > resolutions)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether light of a mixture can be told from the pulse.</summary>
    /// <param name="ratio">R of the pulse.</param>
    /// <param name="mix">The line's red over its infrared, in the logarithm of light.</param>
    public static bool IsTold(double ratio, double mix) => Math.Abs(mix - ratio) > LeastDistance;

    /// <summary>Whether a line has one mixture of red and infrared, and not this one: then it holds no pulse and is no such light.</summary>
    /// <param name="whole">The window with its lines, infrared and red in turn.</param>
    /// <param name="without">The same without its lines.</param>
    /// <param name="mix">The mixture.</param>
    public static bool IsOneMixtureOtherThan(ReadOnlySpan<double> whole, ReadOnlySpan<double> without, double mix)
    {
        const double oneMixtureRest = 0.02;
        const double equalShare = 0.2;
        double square = 0, cross = 0, red = 0;
        for (var n = 0; n + 1 < whole.Length; n += 2)
        {
            var i = whole[n] - without[n];
            var r = whole[n + 1] - without[n + 1];
            square += i * i;
            cross += i * r;
            red += r * r;
        }

        var found = cross / square;
        return red - (found * cross) < oneMixtureRest * red && Math.Abs(found - mix) > equalShare * mix;
    }

    /// <summary>Leaves of a line only what is pulse, by two equations for each sample: i = p + f and r = R p + M f.</summary>
    /// <param name="whole">The window with its lines, infrared and red in turn; loses f.</param>
    /// <param name="without">The same without its lines.</param>
    /// <param name="ratio">R of the pulse.</param>
    /// <param name="mix">M, the line's red over its infrared.</param>
    /// <returns>Amplitude of f, as a sine of the same power has it.</returns>
    public static double LeavePulse(Span<double> whole, ReadOnlySpan<double> without, double ratio, double mix)
    {
        var power = 0.0;
        for (var n = 0; n + 1 < whole.Length; n += 2)
        {
            var infrared = whole[n] - without[n];
            var red = whole[n + 1] - without[n + 1];
            var pulse = ((mix * infrared) - red) / (mix - ratio);
            whole[n] = without[n] + pulse;
            whole[n + 1] = without[n + 1] + (ratio * pulse);
            power += (infrared - pulse) * (infrared - pulse);
        }

        return Math.Sqrt(4 * power / whole.Length);
    }

    /// <summary>Amplitude of the infrared of all that was taken away as lines, as a sine of the same power has it.</summary>
    /// <param name="whole">The window with its lines, infrared and red in turn.</param>
    /// <param name="without">The same without its lines.</param>
    public static double AmplitudeOf(ReadOnlySpan<double> whole, ReadOnlySpan<double> without)
    {
        var power = 0.0;
        for (var n = 0; n + 1 < whole.Length; n += 2)
        {
            power += (whole[n] - without[n]) * (whole[n] - without[n]);
        }

        return Math.Sqrt(4 * power / whole.Length);
    }

    /// <summary>Amplitude of what all that was taken away as lines adds to red beyond R times infrared, which holds none of the pulse, as a sine of the same power has it.</summary>
    /// <param name="whole">The window with its lines, infrared and red in turn.</param>
    /// <param name="without">The same without its lines.</param>
    /// <param name="ratio">R of the pulse.</param>
    public static double AmplitudeBesidePulse(ReadOnlySpan<double> whole, ReadOnlySpan<double> without, double ratio)
    {
        var power = 0.0;
        for (var n = 0; n + 1 < whole.Length; n += 2)
        {
            var beside = whole[n + 1] - without[n + 1] - (ratio * (whole[n] - without[n]));
            power += beside * beside;
        }

        return Math.Sqrt(4 * power / whole.Length);
    }

    /// <summary>Root mean square of the infrared of a window.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    public static double SizeOf(ReadOnlySpan<double> pairs) => Math.Sqrt(RatioSums.Over(pairs).Infrared / (pairs.Length / 2));

    private static double Size((double Cosine, double Sine) wave) => Math.Sqrt((wave.Cosine * wave.Cosine) + (wave.Sine * wave.Sine));
}
