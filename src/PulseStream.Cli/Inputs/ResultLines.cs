using System.Text.Json;
using PulseStream.Cli.Output;
using PulseStream.Comparison;
using PulseStream.Samples;
using PulseStream.Triage;

namespace PulseStream.Cli.Inputs;

/// <summary>Reads results back that were printed as one JSON object a line.</summary>
internal static class ResultLines
{
    private const string Unknown = "unknown";
    private const string Remedy = "Give an archive, a session's folder, or what 'replay --format ndjson' printed";

    /// <summary>The results of every recording in a file. A line that cannot be read spoils its recording alone.</summary>
    /// <exception cref="BadInputException">The file cannot be read, or it does not begin with a session line.</exception>
    public static IReadOnlyList<RecordingResults> Read(string path)
    {
        var all = new List<RecordingResultsBuilder>();
        var number = 0;
        foreach (var line in Lines(path).Where(line => !string.IsNullOrWhiteSpace(line)))
        {
            number++;
            try
            {
                using var document = JsonDocument.Parse(line);
                Take(document.RootElement, all);
            }
            catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or OverflowException)
            {
                if (all.Count == 0)
                {
                    throw new BadInputException($"{path}, line {number}", "expected results as JSON that begin with a session line, found otherwise", Remedy, e);
                }

                all[^1].Spoil($"{path}, line {number}: expected a line of results, found otherwise. Run the recording again.");
            }
        }

        return all.Count > 0 ? [.. all.Select(one => one.Build())] : throw new BadInputException(path, "it is empty, expected results", Remedy);
    }

    private static void Take(JsonElement line, List<RecordingResultsBuilder> all)
    {
        var kind = line.GetProperty(WireNames.Kind).GetString();
        if (kind == WireNames.Session)
        {
            all.Add(new RecordingResultsBuilder(line.GetProperty(WireNames.Source).GetString() ?? throw new JsonException("null"), JudgedByOf(line)));
            return;
        }

        var now = all.Count > 0 ? all[^1] : throw new JsonException("no session line");
        switch (kind)
        {
            case WireNames.Second:
                now.AddSecond(line.GetProperty(WireNames.Usable).GetBoolean());
                break;
            case WireNames.Reading:
                now.Add(new AcceptedValue(Whole(line, WireNames.Second), (int)Math.Round(line.GetProperty(WireNames.Spo2).GetDouble())));
                break;
            case WireNames.Sitting:
                now.Add(new FingerSpan(Whole(line, WireNames.From), Whole(line, WireNames.To)));
                break;
            case WireNames.Advice:
                now.Add(AdviceOf(line, now.Seconds));
                break;
            case WireNames.End:
                now.End(Whole(line, WireNames.Seconds), Whole(line, WireNames.UsableSeconds));
                break;
            default:
                break;
        }
    }

    // Results of earlier versions tell no hashes.
    private static string JudgedByOf(JsonElement line) => JudgedBy.Of(
        TextOf(line, WireNames.Curve) ?? Unknown,
        TextOf(line, WireNames.CurveHash),
        TextOf(line, WireNames.Policy) ?? Unknown,
        TextOf(line, WireNames.PolicyHash),
        TextOf(line, WireNames.Version) ?? Unknown);

    private static string? TextOf(JsonElement line, string name) => line.TryGetProperty(name, out var found) ? found.ToString() : null;

    // An advice without a second stands where it was told.
    private static GivenLevel AdviceOf(JsonElement line, long now)
    {
        var second = line.TryGetProperty(WireNames.Second, out var told) && told.ValueKind == JsonValueKind.Number ? (long)told.GetDouble() : now;
        return AdviceLevelName.TryParse(line.GetProperty(WireNames.Level).GetString() ?? "", out var level)
            ? new GivenLevel(second, level)
            : throw new JsonException("unknown level");
    }

    private static long Whole(JsonElement line, string name) => checked((long)line.GetProperty(name).GetDouble());

    // One at a time: the results of a year are some gigabytes of lines.
    private static IEnumerable<string> Lines(string path)
    {
        using var lines = Believed(path, () => File.OpenText(path));
        while (Believed(path, lines.ReadLine) is { } line)
        {
            yield return line;
        }
    }

    private static T Believed<T>(string path, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new BadInputException(path, "there is no such file or folder", "Check the path and run again", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(path, $"it could not be read ({e.Message.TrimEnd('.')})", "Check the path and run again", e);
        }
    }
}
