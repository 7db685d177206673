namespace PulseStream.Plots.Bench;

/// <summary>One heat map of several.</summary>
/// <param name="Title">What it is of.</param>
/// <param name="Columns">Names of the columns from the left.</param>
/// <param name="Rows">Names of the rows from the bottom.</param>
/// <param name="Cells">Its squares; where one is missing it stays white.</param>
public sealed record HeatMap(string Title, IReadOnlyList<string> Columns, IReadOnlyList<string> Rows, IReadOnlyList<HeatCell> Cells);
