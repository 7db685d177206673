using Spectre.Console;

namespace PulseStream.Cli;

/// <summary>What the program reads from and writes to.</summary>
/// <param name="Input">Standard input.</param>
/// <param name="Output">Standard output: results, UTF-8.</param>
/// <param name="Error">Standard error: diagnostics.</param>
/// <param name="Clock">Tells the present where a person asks about now.</param>
public sealed record Surroundings(Stream Input, Stream Output, TextWriter Error, TimeProvider Clock)
{
    /// <summary>The terminal, where results go to one; null where they are redirected.</summary>
    public IAnsiConsole? Screen { get; init; }

    /// <summary>Says what went wrong, in one line: a library's words may hold line ends.</summary>
    /// <param name="sentence">The sentence.</param>
    internal void Complain(string sentence)
    {
        Error.WriteLine(sentence.ReplaceLineEndings(" "));
        Error.Flush();
    }
}
