namespace PulseStream.Signal;

/// <summary>Mean of the samples of one bin.</summary>
/// <param name="Index">Bin index: sample index over samples per bin.</param>
/// <param name="Infrared">Natural logarithm of infrared light.</param>
/// <param name="Red">Natural logarithm of red light; 0 where the recording has none.</param>
internal readonly record struct Bin(long Index, double Infrared, double Red);
