using System.Globalization;
using System.Text;
using PulseStream.Samples;

namespace PulseStream.Sources.Edf;

/// <summary>Reads an EDF header field by field; every complaint names the byte.</summary>
internal sealed class EdfHeaderReader
{
    private const int FixedBytes = 256;
    private const int BytesPerSignal = 256;
    private const int MostSignals = 1024;

    // A record of more would not fit into memory as a whole, and no recorder writes one.
    private const int MostSamplesPerRecord = 10_000_000;

    // Two digits of a year: 85 to 99 are 1985 to 1999 (EDF+ 2.1.3.2).
    private const int FirstYearOfTheCentury = 85;

    private readonly byte[] _bytes;
    private readonly string _source;
    private int _at;

    private EdfHeaderReader(byte[] bytes, string source) => (_bytes, _source) = (bytes, source);

    /// <summary>Reads the header at the start of a stream.</summary>
    /// <exception cref="BadInputException">It is none.</exception>
    public static EdfHeader Read(Stream stream, string source)
    {
        var start = new byte[FixedBytes];
        var found = stream.ReadAtLeast(start, FixedBytes, throwOnEndOfStream: false);
        var reader = new EdfHeaderReader(start, source);
        if (found < FixedBytes)
        {
            throw reader.Bad("a header of 256 bytes", $"the end of the file after {found}");
        }

        return reader.Read(stream);
    }

    private EdfHeader Read(Stream stream)
    {
        var version = Text(8);
        if (version != "0")
        {
            throw Bad("EDF, version 0", $"'{version}'");
        }

        // Patient and recording stay unread: who it is, is none of our business.
        Skip(160);
        var start = StartOf(Text(8), Text(8));
        var headerBytes = Whole(8, "the number of header bytes");
        var reserved = Text(44);
        var records = Whole(8, "the number of data records");
        var seconds = Number(8, "the length of a data record");
        var count = Whole(4, "the number of signals");
        if (count is < 1 or > MostSignals || headerBytes != FixedBytes + (count * BytesPerSignal))
        {
            throw Bad($"1 to {MostSignals} signals and 256 header bytes for each and 256 more", $"{count} signals and {headerBytes} bytes");
        }

        var rest = new byte[count * BytesPerSignal];
        if (stream.ReadAtLeast(rest, rest.Length, throwOnEndOfStream: false) < rest.Length)
        {
            throw Bad($"a header of {headerBytes} bytes", "the end of the file within it");
        }

        var signals = new EdfHeaderReader([.. _bytes, .. rest], _source) { _at = FixedBytes }.Signals(count);
        return new EdfHeader(start, headerBytes, reserved.StartsWith("EDF+", StringComparison.Ordinal), reserved.StartsWith("EDF+D", StringComparison.Ordinal), records < 0 ? null : records, seconds, signals);
    }

    private List<EdfSignal> Signals(int count)
    {
        var labels = Each(count, () => Text(16));
        Skip(80 * count);
        var units = Each(count, () => Text(8));
        var physicalMins = Each(count, () => Number(8, "a physical minimum"));
        var physicalMaxs = Each(count, () => Number(8, "a physical maximum"));
        var digitalMins = Each(count, () => Whole(8, "a digital minimum"));
        var digitalMaxs = Each(count, () => Whole(8, "a digital maximum"));
        Skip(80 * count);
        var samples = Each(count, () => Whole(8, "the number of samples in a record"));
        return
        [
            .. Enumerable.Range(0, count).Select(i => samples[i] is >= 0 and <= MostSamplesPerRecord
                ? new EdfSignal(labels[i], units[i], physicalMins[i], physicalMaxs[i], digitalMins[i], digitalMaxs[i], samples[i])
                : throw Bad($"0 to {MostSamplesPerRecord} samples in a record", $"{samples[i]}")),
        ];
    }

    // 01.01.85, 00.00.00 is what stands there where the start is not to be told.
    private static DateTime? StartOf(string date, string time)
    {
        if ((date, time) == ("01.01.85", "00.00.00") || !DateTime.TryParseExact($"{date} {time}", "dd.MM.yy HH.mm.ss", CultureInfo.InvariantCulture, DateTimeStyles.None, out var start))
        {
            return null;
        }

        var year = start.Year % 100;
        return start.AddYears((year >= FirstYearOfTheCentury ? 1900 : 2000) + year - start.Year);
    }

    private static T[] Each<T>(int count, Func<T> read) => [.. Enumerable.Range(0, count).Select(_ => read())];

    private string Text(int length)
    {
        // Latin-1 never fails: labels of real files hold letters that EDF does not allow.
        var text = Encoding.Latin1.GetString(_bytes, _at, length).TrimEnd(' ', '\0').TrimStart();
        _at += length;
        return text;
    }

    private void Skip(int length) => _at += length;

    private int Whole(int length, string what)
    {
        var text = Text(length);
        return int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            ? number
            : double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var plain) && plain == Math.Floor(plain) && Math.Abs(plain) <= int.MaxValue
                ? (int)plain
                : throw Bad(what, $"'{Csv.PrintableText.Of(text)}'");
    }

    private double Number(int length, string what)
    {
        var text = Text(length);
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw Bad(what, $"'{Csv.PrintableText.Of(text)}'");
    }

    private BadInputException Bad(string expected, string found) =>
        new($"{_source}, byte {_at}", $"expected {expected}, found {found}", "Check that this is an EDF file and whole");
}
