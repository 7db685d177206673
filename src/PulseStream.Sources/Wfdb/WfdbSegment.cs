namespace PulseStream.Sources.Wfdb;

/// <summary>A segment line of a WFDB header.</summary>
/// <param name="Name">Its record; ~ for a gap.</param>
/// <param name="Frames">Its length.</param>
internal sealed record WfdbSegment(string Name, long Frames);
