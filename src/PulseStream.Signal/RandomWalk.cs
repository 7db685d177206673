namespace PulseStream.Signal;

/// <summary>
/// Tells whether what is left of red beside R times infrared walks at random, each step independent of the last, as vessels and a
/// settling pad do. A pulse that hides beneath a movement leaves its waves there, and a movement those that it is made of.
/// </summary>
/// <remarks>
/// Source: the power of a random walk falls with the square of frequency, and its periodogram over its mean is an exponential variate
/// (M. B. Priestley, Spectral Analysis and Time Series, 1981, section 6.1): the mean of its squares is twice the square of its mean.
/// </remarks>
/// <param name="design">Bins and smoothing.</param>
internal sealed class RandomWalk(SignalDesign design)
{
    // Taking away what is slow leaves less of a walk below the first, and smoothing too little above the second.
    private const double SlowestHz = 0.7;
    private const double FastestHz = 6;

    // Enough for the share of the walk to settle to a hundredth.
    private const int Rounds = 12;

    // Of a walk hardly one window in twenty has more. The waves of a pulse beneath a movement, and those of a movement, had 4.2 to 13.
    private const double MostUnevenness = 3;
    private readonly Wave[] waves = new Wave[(int)(FastestHz * design.Options.LongestWindowSeconds) + 1];

    /// <summary>Whether a window's lights disagree by a random walk and white noise.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="ratio">R.</param>
    /// <param name="noise">White noise of a bin.</param>
    public bool IsLeft(ReadOnlySpan<double> pairs, double ratio, in WhiteNoise noise)
    {
        var turns = pairs.Length / 2 / design.BinRateHz;
        var first = (int)Math.Ceiling(SlowestHz * turns);
        var found = waves.AsSpan(0, (int)(FastestHz * turns) - first + 1);
        for (var k = 0; k < found.Length; k++)
        {
            found[k] = WaveAt(first + k, pairs, ratio);
        }

        return Unevenness(found, noise.OfResidual(ratio)) < MostUnevenness;
    }

    private Wave WaveAt(int turns, ReadOnlySpan<double> pairs, double ratio)
    {
        var bins = pairs.Length / 2;
        var (turnSine, turnCosine) = Math.SinCos(Math.Tau * turns / bins);
        var (cosine, sine, ofCosine, ofSine) = (1.0, 0.0, 0.0, 0.0);
        for (var n = 0; n < pairs.Length; n += 2)
        {
            var rest = pairs[n + 1] - (ratio * pairs[n]);
            ofCosine += rest * cosine;
            ofSine += rest * sine;
            (cosine, sine) = ((cosine * turnCosine) - (sine * turnSine), (sine * turnCosine) + (cosine * turnSine));
        }

        var gain = design.Kernel.GainAt((double)turns / bins);
        return new(((ofCosine * ofCosine) + (ofSine * ofSine)) / (bins * gain * gain), 1 / (2 * (1 - turnCosine)));
    }

    // Mean of the squares over the square of the mean, each as a share of what a walk and white noise have there.
    private static double Unevenness(ReadOnlySpan<Wave> found, double white)
    {
        var step = StepOf(found, white);
        var (sum, squares) = (0.0, 0.0);
        foreach (ref readonly var wave in found)
        {
            var share = wave.Power / ((step * wave.OfWalk) + white);
            sum += share;
            squares += share * share;
        }

        return found.Length * squares / (sum * sum);
    }

    // Variance of a walk's step that makes the whole likeliest, beside the white noise that is known: each round weighs a wave by the walk's part of it.
    private static double StepOf(ReadOnlySpan<Wave> found, double white)
    {
        var step = 0.0;
        foreach (ref readonly var wave in found)
        {
            step += wave.Power / (wave.OfWalk * found.Length);
        }

        for (var round = 0; round < Rounds; round++)
        {
            var (sum, weight) = (0.0, 0.0);
            foreach (ref readonly var wave in found)
            {
                var expected = (step * wave.OfWalk) + white;
                var part = step * wave.OfWalk / expected;
                sum += part * wave.Power / expected;
                weight += part;
            }

            step *= sum / weight;
        }

        return step;
    }

    private readonly record struct Wave(double Power, double OfWalk);
}
