using System.Buffers.Binary;
using System.Globalization;
using PulseStream.Samples;
using PulseStream.Sources.Signals;

namespace PulseStream.Sources.Wfdb;

/// <summary>
/// Writes a recording as a WFDB record: NAME.hea and NAME.dat, in format 16, 24 or 32, whichever is the narrowest that
/// holds every value. Counts read back equal; decimals keep six places, or what 32 bits hold. Missing samples carry the
/// format's mark for them.
/// </summary>
public sealed class WfdbRecordingWriter : IDisposable
{
    private static readonly (int Format, int Bytes, long Largest)[] Formats = [(16, 2, short.MaxValue), (24, 3, (1 << 23) - 1), (32, 4, int.MaxValue)];

    private readonly string _path;
    private readonly RecordingHeader _header;
    private readonly RecordingScan _scan;
    private readonly Channel[] _channels;
    private readonly double[] _gains;
    private readonly long[] _sums;
    private readonly long?[] _firsts;
    private readonly (int Format, int Bytes, long Largest) _format;
    private readonly FileStream _samples;
    private readonly byte[] _frame;
    private long _next;

    /// <summary>Begins a record.</summary>
    /// <param name="path">NAME.hea; its letters, digits, - and _ name the record.</param>
    /// <param name="header">The recording.</param>
    /// <param name="scan">What a first reading of it found.</param>
    /// <exception cref="BadInputException">The name is none that WFDB allows.</exception>
    public WfdbRecordingWriter(string path, RecordingHeader header, RecordingScan scan)
    {
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(scan);
        (_path, _header, _scan) = (path, header, scan);
        if (!Path.GetFileNameWithoutExtension(path).All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_'))
        {
            throw new BadInputException(path, "a WFDB record's name has letters, digits, - and _ alone", "Choose such a name");
        }

        _channels = [.. Channels.Of(header.Columns)];
        _gains = [.. _channels.Select(channel => GainOf(scan.Ranges[channel]))];
        (_sums, _firsts) = (new long[_channels.Length], new long?[_channels.Length]);
        _format = Formats.First(format => format.Format == 32 || _channels.Select((channel, i) => Fits(scan.Ranges[channel], _gains[i], format.Largest)).All(fits => fits));
        _frame = new byte[_format.Bytes * _channels.Length];
        _samples = new FileStream(Path.ChangeExtension(path, ".dat"), FileMode.Create, FileAccess.Write, FileShare.None, 64 * 1024);
    }

    /// <summary>Whether every value reads back as it was; else the last decimals are rounded.</summary>
    public bool IsExact => _channels.Select((channel, i) => _gains[i] >= Math.Pow(10, _scan.Ranges[channel].Decimals)).All(isExact => isExact);

    /// <summary>Writes samples, and marks for those that are missing before them.</summary>
    /// <param name="block">Follows the block before it.</param>
    public void Write(SampleBlock block)
    {
        while (_next < block.FirstIndex)
        {
            WriteFrame(Sample.OfLight(double.NaN, double.NaN));
        }

        foreach (ref readonly var sample in block.Samples.Span)
        {
            WriteFrame(in sample);
        }
    }

    /// <summary>Writes the header: the record is whole.</summary>
    public void Finish()
    {
        _samples.Flush(flushToDisk: true);
        File.WriteAllText(_path, HeaderText());
    }

    /// <inheritdoc/>
    public void Dispose() => _samples.Dispose();

    private static double GainOf(ChannelRange range)
    {
        var decimals = range.Decimals;
        while (decimals > 0 && !Fits(range, Math.Pow(10, decimals), int.MaxValue))
        {
            decimals--;
        }

        return Math.Pow(10, decimals);
    }

    private static bool Fits(ChannelRange range, double gain, long largest) =>
        !range.IsKnown || (range.Min * gain >= -largest && range.Max * gain <= largest);

    private void WriteFrame(in Sample sample)
    {
        Span<byte> bytes = stackalloc byte[4];
        for (var i = 0; i < _channels.Length; i++)
        {
            var value = Channels.ValueOf(in sample, _channels[i]);
            var stored = double.IsFinite(value) ? (long)Math.Clamp(Math.Round(value * _gains[i]), -_format.Largest, _format.Largest) : -_format.Largest - 1;
            BinaryPrimitives.WriteInt32LittleEndian(bytes, (int)stored);
            bytes[.._format.Bytes].CopyTo(_frame.AsSpan(i * _format.Bytes));
            _sums[i] = (_sums[i] + stored) & 0xFFFF;
            _firsts[i] ??= stored;
        }

        _samples.Write(_frame);
        _next++;
    }

    private string HeaderText()
    {
        var name = Path.GetFileNameWithoutExtension(_path);
        var start = _header.Start is { } instant ? instant.ToString(" HH:mm:ss.fff dd/MM/yyyy", CultureInfo.InvariantCulture) : "";
        var lines = new List<string> { string.Create(CultureInfo.InvariantCulture, $"{name} {_channels.Length} {_header.Rate.Hz:R} {_next}{start}") };
        for (var i = 0; i < _channels.Length; i++)
        {
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"{name}.dat {_format.Format} {_gains[i]:0}(0)/{Channels.UnitOf(_channels[i])} {8 * _format.Bytes} 0 {_firsts[i] ?? 0} {SignedSum(i)} 0 {Channels.NameOf(_channels[i])}"));
        }

        return string.Join('\n', lines) + "\n";
    }

    private short SignedSum(int i) => unchecked((short)(ushort)_sums[i]);
}
