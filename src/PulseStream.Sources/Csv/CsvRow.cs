using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>A row whose numbers are good.</summary>
/// <param name="Line">Line of the file, the header is line 1.</param>
/// <param name="Counter">The column 'sample', 0 where there is none.</param>
/// <param name="Seconds">The column 'time_s', NaN where there is none.</param>
/// <param name="Sample">What the row measured.</param>
internal readonly record struct CsvRow(long Line, long Counter, double Seconds, Sample Sample);
