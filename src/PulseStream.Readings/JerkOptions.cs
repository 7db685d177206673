namespace PulseStream.Readings;

/// <summary>Limits between light that is jerked and light that moves with its pulse, each with its reason.</summary>
public sealed record JerkOptions
{
    /// <summary>Swing of a second in sizes of the pulse, root mean squares, above which it is jerked: the pulse itself swings by its own size within a second, a slow one by half as much again, and breathing adds to it.</summary>
    public double Pulses { get; init; } = 2.5;

    /// <summary>Swing of a second, root mean square of the logarithm of light, above which it is jerked whatever its pulse is: the tallest pulse, and breathing beside it, swing by half of that; a finger that is put on swings by several times as much.</summary>
    public double Swing { get; init; } = 0.1;

    /// <summary>Seconds after air in which a jerk is still the finger that comes: it is on within a second, which may fall on two.</summary>
    public int ComingSeconds { get; init; } = 2;
}
