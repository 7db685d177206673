namespace PulseStream.Comparison;

/// <summary>By what results were judged, in one line.</summary>
public static class JudgedBy
{
    /// <summary>The line.</summary>
    /// <param name="curve">Name of the curve.</param>
    /// <param name="curveHash">The curve's <see cref="Archive.SettingsHash"/>, which tells two of one name apart; null where it is not told.</param>
    /// <param name="policy">Name of the policy.</param>
    /// <param name="policyHash">The same of the policy.</param>
    /// <param name="version">Version of the program.</param>
    public static string Of(string curve, string? curveHash, string policy, string? policyHash, string version) =>
        $"curve {curve}{Bracketed(curveHash)}, policy {policy}{Bracketed(policyHash)}, version {version}";

    private static string Bracketed(string? hash) => hash is null ? "" : $" ({hash})";
}
