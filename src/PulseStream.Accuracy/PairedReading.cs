namespace PulseStream.Accuracy;

/// <summary>A device's reading beside the reference's value of the same moment.</summary>
/// <param name="Subject">Pseudonym of the person.</param>
/// <param name="Reference">What the reference said: SaO2 or a reference SpO2 in percent, or a pulse rate a minute.</param>
/// <param name="Reading">What the device said, in the same unit.</param>
public sealed record PairedReading(string Subject, double Reference, double Reading)
{
    /// <summary>Skin tone as the study names it; null where not told.</summary>
    public string? SkinTone { get; init; }

    /// <summary>Where the sensor sat; null where not told.</summary>
    public string? Site { get; init; }

    /// <summary>Which device; null where not told.</summary>
    public string? Device { get; init; }

    /// <summary>Reading less reference.</summary>
    public double Error => Reading - Reference;
}
