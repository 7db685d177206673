namespace PulseStream.Plots.Bench;

/// <summary>One square of a heat map.</summary>
/// <param name="Column">Which column, from 0 at the left.</param>
/// <param name="Row">Which row, from 0 at the bottom.</param>
/// <param name="Text">What stands in it.</param>
/// <param name="Small">What stands below that.</param>
/// <param name="Share">Value over the limit, for its colour; null where there is no value: grey.</param>
/// <param name="IsOutlined">Whether it is beyond the limit.</param>
public sealed record HeatCell(int Column, int Row, string Text, string Small, double? Share, bool IsOutlined);
