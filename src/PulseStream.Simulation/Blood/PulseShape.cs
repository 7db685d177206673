namespace PulseStream.Simulation.Blood;

/// <summary>
/// The course of blood volume over one beat: a sum of two bells over the beat's phase (0 to 1), the ejection of the heart
/// and the second wave behind it.
/// </summary>
/// <remarks>
/// Form and numbers: Tang, Sci Rep 2020;10:13883, table 1, class "excellent", angles in [-π, π) turned into phase by
/// (θ + π) / 2π. A train of such beats is summed, so that neighbours join without a step.
/// </remarks>
internal static class PulseShape
{
    /// <summary>Phase at the top of the first bell.</summary>
    public const double FirstCentre = (-1.5161 + Math.PI) / Math.Tau;

    /// <summary>Width of the first bell, as one deviation.</summary>
    public const double FirstWidth = 0.6303 / Math.Tau;

    private const double SecondCentre = (0.8186 + Math.PI) / Math.Tau;
    private const double SecondWidth = 1.0225 / Math.Tau;

    // Five deviations: beyond them a bell is below 4e-6 of its height.
    private const double Reach = 5;

    /// <summary>Phase before which the beat adds nothing.</summary>
    public const double Start = FirstCentre - (Reach * FirstWidth);

    /// <summary>Phase after which the beat adds nothing.</summary>
    public const double End = SecondCentre + (Reach * SecondWidth);

    /// <summary>Volume, about 1 at its top.</summary>
    /// <param name="phase">Phase of the beat; below 0 and above 1 lie its neighbours.</param>
    /// <param name="secondWave">Height of the second bell over that of the first.</param>
    public static double Volume(double phase, double secondWave)
    {
        var first = (phase - FirstCentre) / FirstWidth;
        var second = (phase - SecondCentre) / SecondWidth;
        return Math.Exp(-0.5 * first * first) + (secondWave * Math.Exp(-0.5 * second * second));
    }

    /// <summary>Rise of the volume per unit of phase.</summary>
    /// <param name="phase">Phase of the beat.</param>
    /// <param name="secondWave">Height of the second bell over that of the first.</param>
    public static double Rise(double phase, double secondWave)
    {
        var first = (phase - FirstCentre) / FirstWidth;
        var second = (phase - SecondCentre) / SecondWidth;
        return (-first / FirstWidth * Math.Exp(-0.5 * first * first))
            - (secondWave * second / SecondWidth * Math.Exp(-0.5 * second * second));
    }
}
