using PulseStream.Samples;

namespace PulseStream.Sources.Wfdb;

/// <summary>The samples of one file in the order in which they lie there, a buffer in memory at a time.</summary>
internal sealed class WfdbSampleFile : IDisposable
{
    private const int Buffered = 64 * 1024;

    private readonly FileStream _stream;
    private readonly WfdbFormat _format;
    private readonly byte[] _group;
    private readonly int[] _samples;
    private int _next;
    private int _count;

    /// <summary>Opens a file.</summary>
    /// <exception cref="BadInputException">It cannot be read.</exception>
    public WfdbSampleFile(string path, WfdbFormat format, long byteOffset)
    {
        (_format, _group, _samples) = (format, new byte[format.GroupBytes], new int[format.GroupSamples]);
        try
        {
            _stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, Buffered);
            _stream.Position = byteOffset;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Csv.CsvFailures.Unreadable(path, e);
        }
    }

    /// <summary>Reads the next sample.</summary>
    /// <returns>False at the end of the file.</returns>
    public bool TryRead(out int sample)
    {
        if (_next == _count && !Fill())
        {
            sample = 0;
            return false;
        }

        sample = _samples[_next++];
        return true;
    }

    public void Dispose() => _stream.Dispose();

    private bool Fill()
    {
        var bytes = _stream.ReadAtLeast(_group, _group.Length, throwOnEndOfStream: false);
        _group.AsSpan(bytes).Clear();
        (_next, _count) = (0, _format.SamplesIn(bytes));
        if (_count > 0)
        {
            _format.Decode(_group, _samples);
        }

        return _count > 0;
    }
}
