namespace PulseStream.Archive;

/// <summary>With what a session was judged: enough to judge it again in the same way.</summary>
/// <param name="CurveName">Name of the calibration curve.</param>
/// <param name="CurveJson">The curve as a JSON text, like a curve file.</param>
/// <param name="PolicyName">Name of the triage policy.</param>
/// <param name="PolicyJson">The policy as a JSON text, like a policy file.</param>
/// <param name="Version">Version of the program.</param>
public sealed record SessionSettings(string CurveName, string CurveJson, string PolicyName, string PolicyJson, string Version)
{
    /// <summary>The curve's <see cref="SettingsHash"/>.</summary>
    public string CurveHash => SettingsHash.Of(CurveJson);

    /// <summary>The same of the policy.</summary>
    public string PolicyHash => SettingsHash.Of(PolicyJson);
}
