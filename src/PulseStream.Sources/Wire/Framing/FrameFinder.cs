namespace PulseStream.Sources.Wire.Framing;

/// <summary>Finds frames in bytes that arrive in any pieces. The first frame after opening may be the rest of one: where it is bad, it is no fault.</summary>
internal abstract class FrameFinder
{
    /// <summary>Reads what came, and gives each frame with the time at which its own last byte came.</summary>
    public abstract void Read(ReadOnlySpan<byte> bytes, double arrivalSeconds);

    /// <summary>Nothing has come for long: what is whole need not wait for what follows it.</summary>
    public virtual void Pause()
    {
    }

    /// <summary>Nothing follows the bytes so far: what is unfinished is dropped.</summary>
    public abstract void Break();
}
