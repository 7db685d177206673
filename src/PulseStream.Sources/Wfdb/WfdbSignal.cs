namespace PulseStream.Sources.Wfdb;

/// <summary>A signal line of a WFDB header.</summary>
/// <param name="FileName">File with the samples, beside the header; ~ for none.</param>
/// <param name="Format">Storage format.</param>
/// <param name="SamplesPerFrame">Samples a frame.</param>
/// <param name="Skew">Frames by which the signal is late in its file.</param>
/// <param name="ByteOffset">Bytes before the first sample.</param>
/// <param name="Gain">Units of the converter a physical unit.</param>
/// <param name="Baseline">The converter's value at physical zero.</param>
/// <param name="Unit">Physical unit.</param>
/// <param name="InitialValue">The sample before the first one, for difference formats.</param>
/// <param name="Checksum">Sum of all samples modulo 65536; null where not told.</param>
/// <param name="Name">Description.</param>
internal sealed record WfdbSignal(
    string FileName,
    int Format,
    int SamplesPerFrame,
    int Skew,
    long ByteOffset,
    double Gain,
    int Baseline,
    string Unit,
    int InitialValue,
    int? Checksum,
    string Name);
