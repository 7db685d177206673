namespace PulseStream.Cli;

/// <summary>What the program reads from and writes to.</summary>
/// <param name="Input">Standard input.</param>
/// <param name="Output">Standard output: results, UTF-8.</param>
/// <param name="Error">Standard error: diagnostics.</param>
/// <param name="Clock">Tells the present where a person asks about now.</param>
public sealed record Surroundings(Stream Input, Stream Output, TextWriter Error, TimeProvider Clock);
