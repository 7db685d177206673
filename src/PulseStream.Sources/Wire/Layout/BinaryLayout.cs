namespace PulseStream.Sources.Wire.Layout;

/// <summary>Frames of bytes.</summary>
/// <param name="Frame">How frames are told apart.</param>
/// <param name="Sync">Bytes that open each frame; empty where something else tells frames apart.</param>
/// <param name="Length">Bytes of each frame, unstuffed.</param>
/// <param name="Checksum">What proves a frame.</param>
/// <param name="SampleCount">Samples in a frame.</param>
/// <param name="FirstSampleByte">Where the first sample begins.</param>
/// <param name="Stride">Bytes from one sample to the next.</param>
/// <param name="Fields">Its numbers.</param>
internal sealed record BinaryLayout(
    FrameKind Frame,
    byte[] Sync,
    int Length,
    ChecksumRule Checksum,
    int SampleCount,
    int FirstSampleByte,
    int Stride,
    WireField[] Fields)
{
    /// <summary>First byte that a field counts from.</summary>
    /// <param name="field">The field.</param>
    /// <param name="sample">Which sample of the frame.</param>
    public int BaseOf(WireField field, int sample) => field.IsPerFrame ? 0 : FirstSampleByte + (sample * Stride);
}
