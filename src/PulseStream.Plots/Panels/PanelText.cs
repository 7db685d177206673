namespace PulseStream.Plots.Panels;

/// <summary>What stands above a panel.</summary>
/// <param name="Quantity">What it shows, with the unit.</param>
/// <param name="Key">How to read it.</param>
internal sealed record PanelText(string Quantity, string Key);
