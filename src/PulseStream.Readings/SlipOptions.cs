namespace PulseStream.Readings;

/// <summary>Limits between a finger that slips while the light stays as bright and vessels or blood that change, each with its reason.</summary>
public sealed record SlipOptions
{
    /// <summary>Seconds over which a slipping finger is looked for: breathing and vessels change a pulse within them too, saturation by little.</summary>
    public int Seconds { get; init; } = 25;

    /// <summary>Believed seconds before the highest pulse that were as the newest is, by which that one has only come back: a reading's worth.</summary>
    public int SecondsBefore { get; init; } = 5;

    /// <summary>Beats in a window whose pulse height is compared for it: of fewer the baseline takes more away.</summary>
    public double Beats { get; init; } = 6;

    /// <summary>Shrinking of infrared's pulse within them, as a logarithm, from which it may be a slip: breathing alone changes it by less.</summary>
    public double Shrink { get; init; } = 0.22;

    /// <summary>Change of R that goes with it, as a logarithm: a point and a half at 95 %.</summary>
    public double RatioChange { get; init; } = 0.1;

    /// <summary>Change of R, in units of R, from which it is one too: not quite two points, of little saturation less than that share.</summary>
    public double RatioMove { get; init; } = 0.07;

    /// <summary>The same as a share of the shrinking: where both lights leak alike R stays, and so does the reading.</summary>
    public double RatioShare { get; init; } = 0.4;

    /// <summary>Shrinking, as a logarithm, above which any such change of R is a slip: vessels alone take seconds for a third of the pulse, and leave R.</summary>
    public double LargestShrink { get; init; } = 0.5;

    /// <summary>Move of both lights, as a logarithm, over the shrinking, from which any such change of R is a slip too: what comes past a finger brightens the light by as much as it shrinks the pulse, less what the finger lets go of.</summary>
    public double BothLightsShare { get; init; } = 0.2;

    /// <summary>Least share of the shrinking that goes with R's change: all of it in a slip, but for what breathing and vessels do to the pulse meanwhile.</summary>
    public double Together { get; init; } = 0.6;

    /// <summary>Move of either light, as a logarithm, over the shrinking, from which light may have come past: what leaks takes the place of what the finger lets through by chance, and not in both lights to a tenth; vessels that close move the light by a share of the pulse itself. Where either light's pulse has shrunk by <see cref="LargestShrink"/> it may be a slip without.</summary>
    public double LightShare { get; init; } = 0.1;
}
