using PulseStream.Samples;
using PulseStream.Simulation;

namespace PulseStream.Cli.Output;

/// <summary>Writes a simulated recording and its truth: all three files or none.</summary>
internal static class SimulatedFiles
{
    private const string Unfinished = ".part";

    /// <summary>Writes the files.</summary>
    /// <returns>Their paths.</returns>
    /// <exception cref="BadInputException">They cannot be written, or a recording that was not simulated is there already.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; nothing is left.</exception>
    public static IReadOnlyList<string> Write(string path, SimulatedRecording recording, CancellationToken cancel)
    {
        (string Path, Action<SimulatedRecording, TextWriter> Write)[] files =
        [
            (path, RecordingText.Write),
            (TruthText.SecondsPath(path), TruthText.WriteSeconds),
            (TruthText.BeatsPath(path), TruthText.WriteBeats),
        ];
        CheckPlace(path);
        try
        {
            foreach (var file in files)
            {
                using var text = new StreamWriter(new CancellableFile(file.Path + Unfinished, cancel));
                file.Write(recording, text);
            }

            foreach (var file in files)
            {
                File.Move(file.Path + Unfinished, file.Path, overwrite: true);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException(path, $"it could not be written ({e.Message.TrimEnd('.')})", "Give another place, or free space and rights", e);
        }
        finally
        {
            Remove(files.Select(file => file.Path + Unfinished));
        }

        return [.. files.Select(file => file.Path)];
    }

    // A real recording cannot be had again: only what was simulated may be replaced.
    private static void CheckPlace(string path)
    {
        if (Directory.Exists(path) || Path.GetFileName(path).Length == 0)
        {
            throw new BadInputException(path, "expected the name of a file to write, found a folder", "Name a file in it");
        }

        if (File.Exists(path) && !File.Exists(TruthText.SecondsPath(path)))
        {
            throw new BadInputException(path, "it is there already, and no truth lies beside it, so it may be a real recording", "Give another name");
        }
    }

    private static void Remove(IEnumerable<string> paths)
    {
        foreach (var path in paths.Where(File.Exists))
        {
            File.Delete(path);
        }
    }

    private sealed class CancellableFile(string path, CancellationToken cancel) : FileStream(path, FileMode.Create, FileAccess.Write)
    {
        public override void Write(ReadOnlySpan<byte> buffer)
        {
            cancel.ThrowIfCancellationRequested();
            base.Write(buffer);
        }

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));
    }
}
