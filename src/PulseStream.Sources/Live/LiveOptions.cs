namespace PulseStream.Sources.Live;

/// <summary>How a live source behaves.</summary>
/// <param name="GiveUpAfterSeconds">Nothing for so long after the first byte, or no port, ends the session; null for never.</param>
/// <param name="Say">Hears of an instrument whose clock is off, in sentences; null for nobody.</param>
public sealed record LiveOptions(double? GiveUpAfterSeconds = null, Action<string>? Say = null);
