namespace PulseStream.Sources.Wire.Layout;

/// <summary>How binary frames are told apart.</summary>
public enum FrameKind
{
    /// <summary>Each frame has the same length and opens with the same bytes.</summary>
    Sync = 0,

    /// <summary>Consistent overhead byte stuffing: a zero ends each frame.</summary>
    Cobs,

    /// <summary>RFC 1055: the byte C0 ends each frame.</summary>
    Slip,
}
