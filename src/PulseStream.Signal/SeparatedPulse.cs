namespace PulseStream.Signal;

/// <summary>What separating the pulse from a movement gave.</summary>
/// <param name="Ratio">Ratio of ratios R of the pulse.</param>
/// <param name="StandardError">Its standard error from the movement and from how well the pulse's height is known.</param>
internal readonly record struct SeparatedPulse(double Ratio, double StandardError)
{
    /// <summary>Of two answers of which one is right the mean, whose error is also what they differ by.</summary>
    /// <param name="other">The other one.</param>
    /// <param name="chance">Chance that the other one is right, 0 to 1.</param>
    public SeparatedPulse Or(in SeparatedPulse other, double chance)
    {
        var distance = other.Ratio - Ratio;
        var variance = ((1 - chance) * StandardError * StandardError) + (chance * other.StandardError * other.StandardError);
        return new(Ratio + (chance * distance), Math.Sqrt(variance + (chance * (1 - chance) * distance * distance)));
    }
}
