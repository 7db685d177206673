namespace PulseStream.Readings;

/// <summary>Limits between a lamp, and a pulse that is read beside one, and what moves, each with its reason.</summary>
public sealed record LampOptions
{
    /// <summary>Disagreement of the lights, in units of R, that a second may have where one line is all that disturbed: what it leaves is its own bending and drift, which moves R by no more than this, not 0.4 points.</summary>
    public double PureLineDisagreement { get; init; } = 0.015;

    /// <summary>Amplitude of a line in what the lights disagree by, over the size of a wave that was never seen without it, below which it is not taken for a lamp beside a pulse: a pulse of 1 % makes less beside a movement that drowns it.</summary>
    public double SmallestLamp { get; init; } = 0.1;

    /// <summary>Turns of a line in its window below which it is none either: a line that drifts and bends is eight shapes, as many as four turns have of ups and downs.</summary>
    public double LeastLampTurns { get; init; } = 4;

    /// <summary>Share of the newest seconds' disagreement that one frequency explains, from which a lamp is named beside movement: of a second of chance movement one frequency explains as much in one of six.</summary>
    public double LineShare { get; init; } = 0.8;

    /// <summary>Share of the disagreement's power that one line explains, from which a lamp is named beside movement though it has the pulse's own rate: veins and a hand that moves with the heart have a second harmonic of a twentieth and more.</summary>
    public double PurestLineShare { get; init; } = 0.998;

    /// <summary>Leap of the light from one level to another, in sizes of the known pulse, root mean square, that no beat makes: from trough to peak it is three to four.</summary>
    public double LeapPulses { get; init; } = 4;

    /// <summary>Rise of the steady light, as a logarithm, that tells of light leaking past beside a line, whatever the pulse does: more than a lamp's own mean, of the few times its swing, adds beside a pulse that can be read.</summary>
    public double LeakRiseBesideLines { get; init; } = 0.15;
}
