using PulseStream.Samples;

namespace PulseStream.Sources.Wfdb;

/// <summary>Reads the frames of one piece of a record: all files of its signals in step.</summary>
internal sealed class WfdbFrames : IDisposable
{
    private readonly WfdbHeader _header;
    private readonly string _source;
    private readonly List<(WfdbSampleFile File, int[] Signals, WfdbFormat Format)> _files = [];
    private readonly double[][] _frame;
    private readonly int[] _last;
    private readonly int[] _sums;

    public WfdbFrames(WfdbHeader header, string folder, string source, IEnumerable<int> chosen)
    {
        (_header, _source) = (header, source);
        _frame = [.. header.Signals.Select(signal => new double[signal.SamplesPerFrame])];
        _last = [.. header.Signals.Select(signal => signal.InitialValue)];
        _sums = new int[header.Signals.Count];
        var wanted = chosen.Select(index => header.Signals[index].FileName).ToHashSet(StringComparer.Ordinal);
        try
        {
            foreach (var group in Enumerable.Range(0, header.Signals.Count).GroupBy(index => header.Signals[index].FileName, StringComparer.Ordinal).Where(group => wanted.Contains(group.Key)))
            {
                Open(folder, [.. group]);
            }
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>Physical values of a signal in the frame that was read; NaN where there is no sample.</summary>
    public ReadOnlySpan<double> this[int signal] => _frame[signal];

    /// <summary>Reads a frame.</summary>
    /// <returns>False where a file has ended.</returns>
    public bool TryRead() => _files.TrueForAll(one => TryRead(one.File, one.Signals, one.Format));

    /// <summary>Names the signals whose samples are not those that were written; empty where the header does not tell.</summary>
    public IEnumerable<string> ChangedSignals() => _files
        .SelectMany(one => one.Signals)
        .Where(index => _header.Signals[index].Checksum is { } told && ((told - _sums[index]) & 0xFFFF) != 0)
        .Select(index => _header.Signals[index].Name);

    public void Dispose()
    {
        foreach (var (file, _, _) in _files)
        {
            file.Dispose();
        }
    }

    private void Open(string folder, int[] signals)
    {
        var first = _header.Signals[signals[0]];
        var format = WfdbFormat.Of(first.Format) ?? throw new BadInputException(
            _source, $"expected samples in format {WfdbFormat.Names}, found format {first.Format}", "Convert the record to format 16 or 24 and run again");
        if (Array.Find([.. signals.Select(index => _header.Signals[index])], signal => signal.Skew != 0) is { } skewed)
        {
            throw new BadInputException(_source, $"signal '{skewed.Name}' lies {skewed.Skew} frames late in its file, which is not read here", "Write the record without skew and run again");
        }

        // A header names files beside itself; anything else would read what nobody named.
        var path = Path.Combine(folder, Path.GetFileName(first.FileName));
        _files.Add((new WfdbSampleFile(path, format, first.ByteOffset), signals, format));
    }

    private bool TryRead(WfdbSampleFile file, int[] signals, WfdbFormat format)
    {
        foreach (var index in signals)
        {
            var signal = _header.Signals[index];
            for (var i = 0; i < signal.SamplesPerFrame; i++)
            {
                if (!file.TryRead(out var sample))
                {
                    return false;
                }

                sample = format.IsDifference ? _last[index] += sample : sample;
                _sums[index] = (_sums[index] + (sample & 0xFFFF)) & 0xFFFF;
                _frame[index][i] = sample == format.Invalid ? double.NaN : ((double)sample - signal.Baseline) / signal.Gain;
            }
        }

        return true;
    }
}
