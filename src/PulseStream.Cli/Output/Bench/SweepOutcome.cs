using PulseStream.Sweeps;

namespace PulseStream.Cli.Output.Bench;

/// <summary>What a sweep found.</summary>
/// <param name="Cells">Each cell.</param>
/// <param name="Total">All together.</param>
/// <param name="Limit">Largest A_rms that is right.</param>
internal sealed record SweepOutcome(IReadOnlyList<CellSummary> Cells, CellSummary Total, double Limit)
{
    /// <summary>Where the limit is crossed.</summary>
    public IReadOnlyList<Crossing> Crossings { get; } = Crossing.Of(Cells, Limit);

    /// <summary>Cells beyond the limit.</summary>
    public int Beyond { get; } = Cells.Count(cell => cell.Arms > Limit);

    /// <summary>Cells in which every second was refused.</summary>
    public int Refused { get; } = Cells.Count(cell => cell.Arms is null);
}
