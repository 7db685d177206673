namespace PulseStream.Sweeps;

/// <summary>Two neighbouring cells of which one keeps a limit of A_rms and the other does not.</summary>
/// <param name="Axis">Name of the coordinate in which they differ.</param>
/// <param name="Within">The cell that keeps it.</param>
/// <param name="Beyond">The cell that does not.</param>
public sealed record Crossing(string Axis, SweepPoint Within, SweepPoint Beyond)
{
    /// <summary>Where a limit is crossed. A cell in which no second was used is neither within nor beyond.</summary>
    /// <param name="cells">All cells.</param>
    /// <param name="limit">Largest A_rms that keeps it.</param>
    public static IReadOnlyList<Crossing> Of(IReadOnlyList<CellSummary> cells, double limit)
    {
        ArgumentNullException.ThrowIfNull(cells);
        var found = new List<Crossing>();
        for (var axis = 0; axis < SweepPoint.Names.Count; axis++)
        {
            foreach (var row in cells.GroupBy(cell => string.Join(' ', cell.Point.Values.Where((_, i) => i != axis)), StringComparer.Ordinal))
            {
                CellSummary[] line = [.. row.Where(cell => cell.Arms is not null).OrderBy(cell => cell.Point.Values[axis])];
                found.AddRange(line.Zip(line.Skip(1))
                    .Where(pair => (pair.First.Arms <= limit) != (pair.Second.Arms <= limit))
                    .Select(pair => pair.First.Arms <= limit
                        ? new Crossing(SweepPoint.Names[axis], pair.First.Point, pair.Second.Point)
                        : new Crossing(SweepPoint.Names[axis], pair.Second.Point, pair.First.Point)));
            }
        }

        return found;
    }
}
