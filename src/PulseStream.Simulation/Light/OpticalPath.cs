namespace PulseStream.Simulation.Light;

/// <summary>
/// What lies between emitters and detector at one instant. Light at the detector, over the ordinary light through the finger:
/// brightness · (finger · exp(−absorbance) + leak) + ambient.
/// </summary>
internal record struct OpticalPath()
{
    private const double Gravity = 9.81;

    public double Brightness { get; set; } = 1;

    /// <summary>Share of the way that leads through the finger.</summary>
    public double Finger { get; set; } = 1;

    public double InfraredAbsorbance { get; set; }

    public double RedAbsorbance { get; set; }

    /// <summary>Light that goes another way, over the ordinary light through the finger.</summary>
    public double InfraredLeak { get; set; }

    public double RedLeak { get; set; }

    /// <summary>Light from outside while the emitters shine, over the ordinary infrared light through the finger.</summary>
    public double Ambient { get; set; }

    public double AmbientInTheDark { get; set; }

    public double AccelerationX { get; set; }

    public double AccelerationY { get; set; }

    public double AccelerationZ { get; set; } = Gravity;

    /// <summary>Infrared light of the emitter at the detector.</summary>
    public readonly double Infrared => Brightness * ((Finger * Math.Exp(-InfraredAbsorbance)) + InfraredLeak);

    /// <summary>Red light of the emitter at the detector.</summary>
    public readonly double Red => Brightness * ((Finger * Math.Exp(-RedAbsorbance)) + RedLeak);

    /// <summary>Something else takes the finger's place.</summary>
    /// <param name="share">0 finger, 1 the other.</param>
    /// <param name="infrared">Infrared light that the other lets through, over that of the finger.</param>
    /// <param name="red">Red light, likewise.</param>
    public void Replace(double share, double infrared, double red)
    {
        Finger *= 1 - share;
        InfraredLeak = ((1 - share) * InfraredLeak) + (share * infrared);
        RedLeak = ((1 - share) * RedLeak) + (share * red);
    }
}
