using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Cli.Commands;

/// <summary>What a person asked `replay` for.</summary>
/// <param name="Paths">Recordings, as they were named.</param>
/// <param name="Csv">What is known beside a file.</param>
/// <param name="Map">Which signal carries what.</param>
/// <param name="Session">How each is judged and kept.</param>
internal sealed record ReplayOrder(IReadOnlyList<string> Paths, CsvOptions Csv, SignalMap Map, SessionOrder Session)
{
    /// <summary>Whether files hold what an instrument showed, and no samples.</summary>
    public bool AreReadings { get; init; }
}
