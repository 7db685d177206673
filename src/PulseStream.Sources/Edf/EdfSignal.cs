namespace PulseStream.Sources.Edf;

/// <summary>A signal of an EDF header.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Unit">Physical dimension.</param>
/// <param name="PhysicalMin">Physical value of <paramref name="DigitalMin"/>.</param>
/// <param name="PhysicalMax">Physical value of <paramref name="DigitalMax"/>.</param>
/// <param name="DigitalMin">Smallest sample.</param>
/// <param name="DigitalMax">Largest sample.</param>
/// <param name="SamplesPerRecord">Samples in each data record.</param>
internal sealed record EdfSignal(
    string Label,
    string Unit,
    double PhysicalMin,
    double PhysicalMax,
    int DigitalMin,
    int DigitalMax,
    int SamplesPerRecord)
{
    /// <summary>Label of the signal that carries annotations.</summary>
    public const string Annotations = "EDF Annotations";

    /// <summary>Whether it carries annotations instead of samples.</summary>
    public bool IsAnnotations => Label == Annotations;

    /// <summary>The physical value of a sample; NaN outside the digital limits, where there is none.</summary>
    public double PhysicalOf(short digital) => digital < DigitalMin || digital > DigitalMax
        ? double.NaN
        : PhysicalMin + ((PhysicalMax - PhysicalMin) * ((double)digital - DigitalMin) / ((double)DigitalMax - DigitalMin));
}
