using System.Buffers.Binary;
using System.Text;

namespace PulseStream.Sources.Wfdb;

/// <summary>
/// Writes annotations of a WFDB record in the MIT format: words of 16 bits, the kind in the upper six, in the lower ten the
/// samples since the annotation before; what does not fit there is skipped over. Source: WFDB Applications Guide, annot(5).
/// </summary>
public static class WfdbAnnotationFile
{
    private const int Beat = 1;
    private const int Note = 22;
    private const int Skip = 59;
    private const int Auxiliary = 63;
    private const int IntervalBits = 10;
    private const int LongestInterval = (1 << IntervalBits) - 1;
    private const int LongestText = 255;

    /// <summary>Writes a file: a beat as a normal beat, everything else as a note with its text.</summary>
    /// <param name="path">The file; its ending names the annotator.</param>
    /// <param name="notes">In any order.</param>
    public static void Write(string path, IEnumerable<RecordingNote> notes)
    {
        using var stream = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, 64 * 1024);
        var before = 0L;
        foreach (var note in notes.OrderBy(note => note.Index).ThenBy(note => note.Text, StringComparer.Ordinal))
        {
            var interval = note.Index - before;
            while (interval > LongestInterval)
            {
                var step = Math.Min(interval, int.MaxValue);
                WriteSkip(stream, (int)step);
                interval -= step;
            }

            WriteWord(stream, note.Text is null ? Beat : Note, (int)interval);
            if (note.Text is { } text)
            {
                WriteText(stream, text);
            }

            before = note.Index;
        }

        WriteWord(stream, 0, 0);
        stream.Flush(flushToDisk: true);
    }

    // The upper half comes first, each half with its lower byte first.
    private static void WriteSkip(FileStream stream, int samples)
    {
        WriteWord(stream, Skip, 0);
        Write(stream, (ushort)(samples >> 16));
        Write(stream, (ushort)(samples & 0xFFFF));
    }

    private static void WriteText(FileStream stream, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text).AsSpan();
        bytes = bytes[..Math.Min(bytes.Length, LongestText)];
        WriteWord(stream, Auxiliary, bytes.Length);
        stream.Write(bytes);
        if (bytes.Length % 2 == 1)
        {
            stream.WriteByte(0);
        }
    }

    private static void WriteWord(FileStream stream, int kind, int low) => Write(stream, (ushort)((kind << IntervalBits) | low));

    private static void Write(FileStream stream, ushort word)
    {
        Span<byte> bytes = stackalloc byte[sizeof(ushort)];
        BinaryPrimitives.WriteUInt16LittleEndian(bytes, word);
        stream.Write(bytes);
    }
}
