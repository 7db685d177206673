using System.Text.Json;
using System.Text.Unicode;

namespace PulseStream.Samples;

/// <summary>
/// Opens the JSON files that people write by hand: comments and trailing commas are allowed, doubled members and broken
/// text are not, and every complaint names the place.
/// </summary>
public static class StrictJson
{
    private static readonly byte[] ByteOrderMark = [0xEF, 0xBB, 0xBF];

    /// <summary>Reads a value from a file's root and closes the document.</summary>
    /// <typeparam name="T">What the file describes; nothing of the document may outlive the call.</typeparam>
    /// <param name="utf8Json">The file's bytes, UTF-8 with or without byte order mark.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <param name="read">Turns the root into the value.</param>
    /// <exception cref="BadInputException">No UTF-8, no JSON, a doubled member, half a character, or what <paramref name="read"/> throws.</exception>
    public static T Read<T>(ReadOnlyMemory<byte> utf8Json, string place, Func<JsonElement, T> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        using var document = Open(utf8Json, place);
        try
        {
            return read(document.RootElement);
        }
        catch (InvalidOperationException e)
        {
            // The only way there: an escape such as \ud800, half a character, which no text can hold.
            throw BrokenText(place, e);
        }
    }

    private static JsonDocument Open(ReadOnlyMemory<byte> utf8Json, string place)
    {
        if (!Utf8.IsValid(utf8Json.Span))
        {
            throw new BadInputException(place, "this is not UTF-8 text", "Save it as UTF-8 and run again");
        }

        var options = new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, AllowDuplicateProperties = false };
        var text = utf8Json.Span.StartsWith(ByteOrderMark) ? utf8Json[ByteOrderMark.Length..] : utf8Json;
        try
        {
            return JsonDocument.Parse(text, options);
        }
        catch (JsonException e) when (e.LineNumber is { } line)
        {
            throw new BadInputException($"{place}, line {line + 1}", $"this is not JSON from byte {e.BytePositionInLine + 1} of the line on", "Mend the line; comments and trailing commas are allowed, numbers are plain decimals", e);
        }
        catch (JsonException e)
        {
            using var document = JsonDocument.Parse(text, options with { AllowDuplicateProperties = true });
            throw new BadInputException($"{place}, {DoubledIn(document.RootElement, "")}", "this member stands twice in one object", "Keep each member once", e);
        }
        catch (InvalidOperationException e)
        {
            throw BrokenText(place, e);
        }
    }

    // Path of the first member that stands in its object twice; null where there is none.
    private static string? DoubledIn(JsonElement element, string path) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().GroupBy(member => member.Name, StringComparer.Ordinal)
            .Select(same => (Path: path.Length == 0 ? JsonMembers.Shorten(same.Key) : $"{path}.{JsonMembers.Shorten(same.Key)}", Members: same.ToArray()))
            .Select(same => same.Members.Length > 1 ? same.Path : DoubledIn(same.Members[0].Value, same.Path)).FirstOrDefault(found => found is not null),
        JsonValueKind.Array => element.EnumerateArray().Select((entry, at) => DoubledIn(entry, $"{path}[{at}]")).FirstOrDefault(found => found is not null),
        _ => null,
    };

    private static BadInputException BrokenText(string place, InvalidOperationException e) =>
        new(place, @"a text holds half a character, such as \ud800", "Write the character itself, in UTF-8", e);
}
