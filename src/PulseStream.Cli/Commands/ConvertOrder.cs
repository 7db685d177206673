using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Cli.Commands;

/// <summary>What a person asked `convert` for.</summary>
/// <param name="From">The recording.</param>
/// <param name="To">The file to write.</param>
/// <param name="Known">What is known beside the recording.</param>
/// <param name="Map">Which signal carries what.</param>
/// <param name="Person">Pseudonym; null where not told.</param>
/// <param name="Say">Hears diagnostics.</param>
internal sealed record ConvertOrder(string From, string To, CsvOptions Known, SignalMap Map, string? Person, Action<string> Say)
{
    /// <summary>Whether beats and readings are written as annotations.</summary>
    public bool HasAnnotations { get; init; }
}
