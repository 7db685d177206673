using PulseStream.Readings;

namespace PulseStream.Benchmarks.Believable;

/// <summary>A method of the core, how to take it away, and the figure that falls without it.</summary>
/// <param name="Name">The method.</param>
/// <param name="Without">The settings with the method out of action.</param>
/// <param name="Row">The streams on which it shows.</param>
/// <param name="Figure">Name and unit of the figure.</param>
/// <param name="Read">Reads it off.</param>
internal sealed record Method(
    string Name,
    Func<ReadingOptions, ReadingOptions> Without,
    StreamRow Row,
    string Figure,
    Func<Figures, double> Read);
