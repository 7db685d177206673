namespace PulseStream.Simulation.Blood;

/// <summary>
/// Infrared absorbance from trough to top of a beat that gives the stated perfusion: peak-to-trough of the light over its mean.
/// Solved again only when the perfusion moves.
/// </summary>
internal sealed class PulseDepth(double meanVolume)
{
    // The fixed point gains two digits or more a round for every perfusion allowed.
    private const int Rounds = 8;

    private double _perfusionPercent = double.NaN;
    private double _absorbance;

    /// <summary>Absorbance from trough to top.</summary>
    /// <param name="perfusionPercent">Percent.</param>
    public double At(double perfusionPercent)
    {
        if (!perfusionPercent.Equals(_perfusionPercent))
        {
            _perfusionPercent = perfusionPercent;
            _absorbance = Solve(perfusionPercent / 100);
        }

        return _absorbance;
    }

    private double Solve(double wanted)
    {
        var absorbance = wanted;
        for (var i = 0; i < Rounds && absorbance > 0; i++)
        {
            var light = Math.Exp(meanVolume * absorbance) - Math.Exp((meanVolume - 1) * absorbance);
            absorbance *= wanted / light;
        }

        return absorbance;
    }
}
