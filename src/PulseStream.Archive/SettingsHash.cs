using System.Security.Cryptography;
using System.Text.Json;

namespace PulseStream.Archive;

/// <summary>
/// What tells two curves or two policies of one name apart: the first 16 hexadecimal digits of the SHA-256 of the JSON text without
/// blanks between its members. `curveHash` and `policyHash` are this wherever results are written.
/// </summary>
public static class SettingsHash
{
    // 64 bits: no archive holds so many curves that two of them would share them by chance.
    private const int Digits = 16;

    /// <summary>The hash of a curve or a policy.</summary>
    /// <param name="json">It as a JSON text; line breaks and blanks between its members are no part of it.</param>
    /// <exception cref="JsonException">It is no JSON.</exception>
    public static string Of(string json)
    {
        using var bytes = new MemoryStream();
        using (var compact = new Utf8JsonWriter(bytes))
        {
            using var settings = JsonDocument.Parse(json);
            settings.WriteTo(compact);
        }

        return Convert.ToHexStringLower(SHA256.HashData(bytes.GetBuffer().AsSpan(0, (int)bytes.Length)))[..Digits];
    }
}
