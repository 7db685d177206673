namespace PulseStream.Sources.Live;

/// <summary>The cable's state has changed.</summary>
/// <param name="State">How it stands now.</param>
/// <param name="Before">How it stood before; the same at the start.</param>
/// <param name="SilentSeconds">Since the last byte; 0 where none had come.</param>
public sealed record LinkChange(LinkState State, LinkState Before, double SilentSeconds);
