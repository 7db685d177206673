namespace PulseStream.Tests.OpenRecordings;

/// <summary>Errors of one window's pulse rates against its truth, /min; NaN where none is told.</summary>
/// <param name="OurError">Of the last second's rate; NaN where it is refused.</param>
/// <param name="BeatError">Of the rate of the beats, whatever is thought of them.</param>
/// <param name="RulesError">Of the rate of the beats; NaN where the published rules refuse them.</param>
internal readonly record struct JudgedWindow(double OurError, double BeatError, double RulesError);
