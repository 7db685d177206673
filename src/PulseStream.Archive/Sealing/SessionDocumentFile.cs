using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using PulseStream.Archive.Columns;
using PulseStream.Samples;

namespace PulseStream.Archive.Sealing;

/// <summary>Writes and reads session.json so that a changed byte shows: a wrong rate would make every number wrong.</summary>
internal static class SessionDocumentFile
{
    private static readonly string NoSeal = new('0', 2 * SHA256.HashSizeInBytes);

    /// <summary>Writes the document and waits until the disk has it.</summary>
    /// <param name="path">Where.</param>
    /// <param name="document">The session.</param>
    public static void Write(string path, SessionDocument document)
    {
        var unsealed = JsonSerializer.Serialize(document with { Seal = NoSeal }, SessionJson.Default.SessionDocument) + "\n";
        var seal = SealOf(unsealed);
        using var stream = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None);
        stream.Write(Encoding.UTF8.GetBytes(WithSeal(unsealed, NoSeal, seal)));
        stream.Flush(flushToDisk: true);
    }

    /// <summary>Reads a document.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="BadInputException">It is missing, no session.json, changed, or of a later layout.</exception>
    public static SessionDocument Read(string path)
    {
        var text = Believed(path, () => File.ReadAllText(path, new UTF8Encoding(false, throwOnInvalidBytes: true)));
        var document = Believed(path, () => Parse(text));
        if (!string.Equals(SealOf(WithSeal(text, document.Seal, NoSeal)), document.Seal, StringComparison.Ordinal))
        {
            throw ColumnFile.Damaged(path, "the file is not what was written: its seal differs");
        }

        return document.SchemaVersion == SessionDocument.CurrentSchema && document.Counts is not null && document.Files is not null
            ? document
            : throw new BadInputException(path, $"expected a sealed session of layout {SessionDocument.CurrentSchema}, found layout {document.SchemaVersion}", "Read it with the program that wrote it");
    }

    /// <summary>Reads a document as a journal holds it.</summary>
    /// <param name="text">JSON.</param>
    public static SessionDocument Parse(string text) =>
        JsonSerializer.Deserialize(text, SessionJson.Default.SessionDocument) ?? throw new JsonException("null");

    /// <summary>A document as a journal holds it.</summary>
    /// <param name="document">The session.</param>
    public static string TextOf(SessionDocument document) => JsonSerializer.Serialize(document, SessionJson.Default.SessionDocument);

    private static string SealOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string WithSeal(string text, string from, string to)
    {
        var at = from.Length == to.Length ? text.LastIndexOf(from, StringComparison.Ordinal) : -1;
        return at < 0 ? text : string.Concat(text.AsSpan(0, at), to, text.AsSpan(at + from.Length));
    }

    private static T Believed<T>(string path, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException)
        {
            throw ColumnFile.Damaged(path, $"expected the description of a sealed session, found otherwise ({e.Message.TrimEnd('.')})", e);
        }
    }
}
