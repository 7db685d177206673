namespace PulseStream.Archive.Results;

/// <summary>What every row of a session's results shares, so that a row taken out of its file still says what made it.</summary>
/// <param name="Start">The recording's start, which adds the column `time_utc`; null where it is not known.</param>
/// <param name="Version">Version of the program.</param>
/// <param name="CurveHash">The curve's <see cref="SettingsHash"/>.</param>
internal sealed record ResultOrigin(DateTimeOffset? Start, string Version, string CurveHash);
