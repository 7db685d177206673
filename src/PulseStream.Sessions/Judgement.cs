using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Readings.Curves;
using PulseStream.Triage;
using PulseStream.Triage.Policies;

namespace PulseStream.Sessions;

/// <summary>By what a session is judged.</summary>
/// <param name="Curve">From ratio of ratios to SpO2.</param>
/// <param name="Reading">Limits of acceptance.</param>
/// <param name="Policy">The policy that advice follows.</param>
/// <param name="Circumstances">The person and the device.</param>
/// <param name="History">Readings of the same person from before the session, minutes counted back from its start.</param>
public sealed record Judgement(
    CalibrationCurve Curve,
    ReadingOptions Reading,
    TriagePolicy Policy,
    Circumstances Circumstances,
    IReadOnlyList<EarlierReading> History)
{
    /// <summary>The curve's <see cref="SettingsHash"/>.</summary>
    public string CurveHash => SettingsHash.Of(CurveFile.Format(Curve));

    /// <summary>The same of the policy.</summary>
    public string PolicyHash => SettingsHash.Of(Policy.Json);
}
