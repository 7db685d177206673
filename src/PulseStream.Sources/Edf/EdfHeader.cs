namespace PulseStream.Sources.Edf;

/// <summary>An EDF or EDF+ header (Kemp et al., Electroenceph Clin Neurophysiol 1992;82:391, and 2003;114:1755).</summary>
/// <param name="LocalStart">Start as told, local; null where it is not a date.</param>
/// <param name="HeaderBytes">Bytes before the first data record.</param>
/// <param name="IsPlus">Whether records carry annotations.</param>
/// <param name="IsDiscontinuous">Whether records may lie apart.</param>
/// <param name="Records">Data records; null where not told.</param>
/// <param name="RecordSeconds">Length of each.</param>
/// <param name="Signals">Signals in the order of each record.</param>
internal sealed record EdfHeader(
    DateTime? LocalStart,
    int HeaderBytes,
    bool IsPlus,
    bool IsDiscontinuous,
    long? Records,
    double RecordSeconds,
    IReadOnlyList<EdfSignal> Signals)
{
    /// <summary>Bytes of a data record.</summary>
    public int RecordBytes => 2 * Signals.Sum(signal => signal.SamplesPerRecord);
}
