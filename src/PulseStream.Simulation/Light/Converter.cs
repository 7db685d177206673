namespace PulseStream.Simulation.Light;

/// <summary>The detector's converter: whole counts from 0 to its full scale, where it clips.</summary>
internal sealed class Converter(int bits)
{
    // Where a careful designer sets the emitters: room above for a thin finger, resolution below for a thick one.
    private const double InfraredLevel = 0.55;
    private const double RedLevel = 0.45;

    /// <summary>Largest count.</summary>
    public double FullScale { get; } = Math.ScaleB(1, bits) - 1;

    /// <summary>Counts of red light, ambient light added.</summary>
    public double Red(double light, double ambient) => Counts((RedLevel * light) + (InfraredLevel * ambient));

    /// <summary>Counts of infrared light, ambient light added.</summary>
    public double Infrared(double light, double ambient) => Counts(InfraredLevel * (light + ambient));

    /// <summary>Counts with both emitters dark.</summary>
    public double Dark(double ambient) => Counts(InfraredLevel * ambient);

    // Adding zero makes the zero below nothing that rounding leaves, "-0" in a file, an ordinary one.
    private double Counts(double shareOfFullScale) => Math.Clamp(Math.Round(shareOfFullScale * FullScale), 0, FullScale) + 0.0;
}
