namespace PulseStream.Sources.Wire.Framing;

/// <summary>What is done with the bytes between two delimiters.</summary>
/// <param name="piece">The bytes, without delimiters, at most the longest told; never empty.</param>
/// <param name="arrivalSeconds">When its last byte came.</param>
/// <returns>Why they make no frame.</returns>
internal delegate WireFault PieceTaker(ReadOnlySpan<byte> piece, double arrivalSeconds);
