namespace PulseStream.Sources.Signals;

/// <summary>A signal of a file that carries a channel.</summary>
/// <param name="Index">Which signal of the file, from 0.</param>
/// <param name="Channel">What it carries.</param>
/// <param name="Scale">Factor from its physical unit to ours.</param>
internal sealed record ChosenSignal(int Index, Channel Channel, double Scale);
