using System.Security.Cryptography;
using System.Text;

namespace PulseStream.Page.Web;

/// <summary>What a page on another machine has to know before it is shown anything.</summary>
public sealed class PageToken
{
    // 128 bits: beyond guessing, short enough to be typed from a screen.
    private const int Bytes = 16;

    private readonly byte[] _expected;

    private PageToken(string text)
    {
        Text = text;
        _expected = Encoding.UTF8.GetBytes(text);
    }

    /// <summary>The token, as it is printed once.</summary>
    public string Text { get; }

    /// <summary>A new token, from the system's own source of randomness.</summary>
    public static PageToken Create() => new(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes)));

    /// <summary>Whether a text is the token; takes as long for a near miss as for a far one.</summary>
    /// <param name="text">What was sent; null where nothing was.</param>
    public bool IsMatch(string? text) =>
        text is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(text), _expected);
}
