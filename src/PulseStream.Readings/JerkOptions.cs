namespace PulseStream.Readings;

/// <summary>Limits between light that is jerked and light that moves with its pulse, each with its reason.</summary>
public sealed record JerkOptions
{
    /// <summary>Swing of a second in sizes of the pulse, root mean squares, above which it is jerked: the pulse itself swings by its own size within a second, a slow one by half as much again, and breathing adds to it.</summary>
    public double Pulses { get; init; } = 2.5;

    /// <summary>Swing of a second, root mean square of the logarithm of light, above which it is jerked where no pulse is known: a perfusion of 9 %, which few fingers reach; a finger that comes on swings by ten times as much, and by that in the second that only its end falls on.</summary>
    public double TallestPulse { get; init; } = 0.03;

    /// <summary>Swing of a second, root mean square of the logarithm of light, above which it is jerked and slips no more: twice what the tallest pulse and breathing beside it swing by.</summary>
    public double Swing { get; init; } = 0.1;

    /// <summary>Seconds after air in which a jerk is still the finger that comes: it is on within a second, which may fall on two.</summary>
    public int ComingSeconds { get; init; } = 2;
}
