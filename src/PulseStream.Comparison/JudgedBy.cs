using System.Security.Cryptography;
using System.Text.Json;

namespace PulseStream.Comparison;

/// <summary>By what results were judged, in one line.</summary>
public static class JudgedBy
{
    // Enough to tell the curves of one clinic apart, short enough for a line.
    private const int HashDigits = 8;

    /// <summary>The line.</summary>
    /// <param name="curve">Name of the curve.</param>
    /// <param name="curveJson">The curve, whose hash tells two of one name apart; null where it is not kept.</param>
    /// <param name="policy">Name of the policy.</param>
    /// <param name="version">Version of the program.</param>
    public static string Of(string curve, string? curveJson, string policy, string version) =>
        $"curve {curve}{(curveJson is null ? "" : $" ({HashOf(curveJson)})")}, policy {policy}, version {version}";

    // Line breaks between members are no part of a curve.
    private static string HashOf(string curveJson)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes))
        {
            using var curve = JsonDocument.Parse(curveJson);
            curve.WriteTo(json);
        }

        return Convert.ToHexStringLower(SHA256.HashData(bytes.GetBuffer().AsSpan(0, (int)bytes.Length)))[..HashDigits];
    }
}
