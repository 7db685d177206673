using PulseStream.Sources.Csv;

namespace PulseStream.Sources.Wire.Layout;

/// <summary>A number in a line of text.</summary>
/// <param name="Column">What it means; <see cref="CsvColumn.Ignored"/> where it is skipped.</param>
/// <param name="Scale">Factor from the number to its unit.</param>
/// <param name="Add">Added after that.</param>
internal sealed record TextField(CsvColumn Column, double Scale, double Add);
