namespace PulseStream.Simulation.Chance;

/// <summary>
/// Chance that depends on nothing but a seed, a stream and a place in it: any value can be had in any order, so a cut into
/// blocks or another sample rate changes nothing.
/// </summary>
/// <remarks>
/// SplitMix64 (Steele, Lea, Flood, Fast splittable pseudorandom number generators, OOPSLA 2014): output k is the mixing
/// function of seed + (k + 1)·γ, which makes it random access by nature.
/// </remarks>
internal readonly struct SplitMix(ulong seed, ulong stream)
{
    private const ulong Gamma = 0x9E3779B97F4A7C15;
    private const double UnitOf53Bits = 1.0 / (1UL << 53);

    // A sum of four uniform 16-bit numbers: mean and standard deviation (Irwin-Hall).
    private const double SumOfFourMean = 4 * 65535 / 2.0;
    private const double SumOfFourDeviation = 37837.2276;

    private readonly ulong _state = unchecked(Mix(seed + Gamma) ^ Mix((stream * Gamma) + Gamma));

    /// <summary>Uniform in [0, 1).</summary>
    public double Uniform(long place) => (Bits(place) >> 11) * UnitOf53Bits;

    /// <summary>Uniform in [-1, 1).</summary>
    public double Signed(long place) => (2 * Uniform(place)) - 1;

    /// <summary>
    /// Nearly normal, mean 0, deviation 1, never beyond 3.5: the sum of four uniform numbers. Cheap, for what is
    /// interpolated or varies once a beat.
    /// </summary>
    public double Bell(long place)
    {
        var bits = Bits(place);
        var sum = (bits & 0xFFFF) + ((bits >> 16) & 0xFFFF) + ((bits >> 32) & 0xFFFF) + (bits >> 48);
        return (sum - SumOfFourMean) / SumOfFourDeviation;
    }

    /// <summary>Two independent normal numbers, mean 0, deviation 1 (Box and Muller, Ann Math Stat 1958;29:610).</summary>
    public (double First, double Second) NormalPair(long place)
    {
        var radius = Math.Sqrt(-2 * Math.Log(1 - Uniform(2 * place)));
        var (sine, cosine) = Math.SinCos(Math.Tau * Uniform((2 * place) + 1));
        return (radius * cosine, radius * sine);
    }

    private ulong Bits(long place) => unchecked(Mix(_state + (((ulong)place + 1) * Gamma)));

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
