using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace PulseStream.Page.Web;

/// <summary>The page: one document with its own style and script inside, and a policy that lets nothing else in.</summary>
internal static class PageDocument
{
    private const string StyleMark = "/* style */";
    private const string ScriptMark = "/* script */";

    static PageDocument()
    {
        var style = Read("page.css");
        var script = string.Concat(Read("wave.js"), Read("panels.js"), Read("page.js"));
        Html = Read("page.html").Replace(StyleMark, style, StringComparison.Ordinal).Replace(ScriptMark, script, StringComparison.Ordinal);
        SecurityPolicy =
            $"default-src 'none'; script-src '{HashOf(script)}'; style-src '{HashOf(style)}'; img-src 'self' data:; connect-src 'self'; "
            + "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
    }

    /// <summary>The document.</summary>
    public static string Html { get; }

    /// <summary>Value of the header Content-Security-Policy that goes with it.</summary>
    public static string SecurityPolicy { get; }

    private static string HashOf(string text) => $"sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}";

    private static string Read(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The page's part '{name}' is not in the program.");
        using var reader = new StreamReader(stream, Encoding.UTF8);

        // A browser hashes what it has read, with every line end as one character.
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
