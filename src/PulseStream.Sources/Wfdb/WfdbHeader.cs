namespace PulseStream.Sources.Wfdb;

/// <summary>A WFDB header (header(5) of the WFDB Applications Guide).</summary>
/// <param name="FrameRateHz">Frames a second.</param>
/// <param name="Frames">Length; null where not told.</param>
/// <param name="LocalStart">Time and date of the first frame, as told; null where either is missing.</param>
/// <param name="Signals">Signal lines; empty where the record is made of segments.</param>
/// <param name="Segments">Segment lines; empty where the record is one piece.</param>
internal sealed record WfdbHeader(
    double FrameRateHz,
    long? Frames,
    DateTime? LocalStart,
    IReadOnlyList<WfdbSignal> Signals,
    IReadOnlyList<WfdbSegment> Segments);
