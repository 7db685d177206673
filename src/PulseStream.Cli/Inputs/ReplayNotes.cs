using System.Text;
using System.Text.Json;
using PulseStream.Archive;
using PulseStream.Comparison;

namespace PulseStream.Cli.Inputs;

/// <summary>
/// What a replay of an archive has finished, one recording a line, so that one that was interrupted goes on where it stopped.
/// The file is named for the program and for all that the results depend on: where anything of it has changed, the replay begins anew.
/// </summary>
internal sealed class ReplayNotes : IDisposable
{
    private readonly Lock _lock = new();
    private readonly FileStream? _file;
    private readonly Dictionary<string, RecordingResults> _finished = new(StringComparer.Ordinal);

    private ReplayNotes(FileStream? file) => _file = file;

    /// <summary>Whether what is finished is kept.</summary>
    public bool IsKept => _file is not null;

    /// <summary>Opens the notes of a replay, or begins them. Where the archive cannot be written, or the same replay runs elsewhere, nothing is noted.</summary>
    public static ReplayNotes Open(string archive, string program, string order)
    {
        foreach (var path in UnfinishedReplay.OfOtherPrograms(archive, program))
        {
            Opened(path, FileMode.Open, FileOptions.DeleteOnClose)?.Dispose();
        }

        var notes = new ReplayNotes(Opened(UnfinishedReplay.PathOf(archive, program, order), FileMode.OpenOrCreate, FileOptions.None));
        notes.Read();
        return notes;
    }

    /// <summary>The results of a recording that is finished; null where it is not.</summary>
    public RecordingResults? Of(string path) => _finished.GetValueOrDefault(path);

    /// <summary>Notes a recording at once: a kill loses none that is finished.</summary>
    public void Add(string path, RecordingResults results)
    {
        var line = JsonSerializer.SerializeToUtf8Bytes(new FinishedReplay(path, results), FinishedReplayJson.Default.FinishedReplay);
        lock (_lock)
        {
            _file?.Write([.. line, (byte)'\n']);
            _file?.Flush();
        }
    }

    /// <summary>Removes the notes: all is done.</summary>
    public void Remove()
    {
        if (_file is not null)
        {
            File.Delete(_file.Name);
        }
    }

    public void Dispose() => _file?.Dispose();

    private static FileStream? Opened(string path, FileMode mode, FileOptions options)
    {
        try
        {
            return new FileStream(path, mode, FileAccess.ReadWrite, FileShare.None, bufferSize: 0, options);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private void Read()
    {
        if (_file is null)
        {
            return;
        }

        var bytes = new byte[_file.Length];
        _file.ReadExactly(bytes);

        // A kill may have left half a line at the end.
        var whole = Array.LastIndexOf(bytes, (byte)'\n') + 1;
        _file.SetLength(whole);
        _file.Position = whole;
        foreach (var line in Encoding.UTF8.GetString(bytes, 0, whole).Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (Parsed(line) is { } finished)
            {
                _finished[finished.Path] = finished.Results;
            }
        }
    }

    // A line that cannot be read is a recording to be replayed.
    private static FinishedReplay? Parsed(string line)
    {
        try
        {
            return JsonSerializer.Deserialize(line, FinishedReplayJson.Default.FinishedReplay);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
