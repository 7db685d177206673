using System.Text;
using PulseStream.Samples;
using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Tests.Sources.Wire;

/// <summary>Invented instruments, one for each framing.</summary>
internal static class Instruments
{
    public const double RateHz = 50;

    public static WireLayout Sync { get; } = Binary(
        """
        "framing": "sync", "sync": "A5 5A", "length": 13, "checksum": { "kind": "crc16-ibm-3740", "byte": 11, "byteOrder": "little", "from": 2, "to": 11 },
        "fields": [ { "name": "sample", "byte": 2, "bytes": 1 }, { "name": "red", "byte": 3, "bytes": 4, "byteOrder": "big" },
                    { "name": "infrared", "byte": 7, "bytes": 4, "byteOrder": "little" } ]
        """);

    public static WireLayout Cobs { get; } = Binary(
        """
        "framing": "cobs", "checksum": { "kind": "crc16-kermit", "byte": 14, "byteOrder": "big", "from": 0, "to": 14 },
        "samples": { "count": 2, "first": 2, "stride": 6 },
        "fields": [ { "name": "sample", "byte": 0, "bytes": 2, "byteOrder": "big", "perFrame": true },
                    { "name": "red", "byte": 0, "bytes": 3, "byteOrder": "big" }, { "name": "infrared", "byte": 3, "bytes": 3, "byteOrder": "big" } ]
        """);

    public static WireLayout Slip { get; } = Binary(
        """
        "framing": "slip", "checksum": { "kind": "crc32-iscsi", "byte": 12, "byteOrder": "little", "from": 0, "to": 12 },
        "fields": [ { "name": "sample", "byte": 0, "bytes": 4, "byteOrder": "little" }, { "name": "red", "byte": 4, "bytes": 4, "byteOrder": "little" },
                    { "name": "infrared", "byte": 8, "bytes": 4, "byteOrder": "big" } ]
        """);

    public static WireLayout Text { get; } = Parse(
        """ "text": { "separator": ",", "startsWith": "$HUT", "checksum": "xor-hex", "fields": ["-", "sample", "red", "infrared"] } """);

    public static WireLayout PlainText { get; } = Parse(""" "text": { "separator": "whitespace", "fields": ["sample", "red", "infrared"] } """);

    public static WireLayout Unproven { get; } = Binary(
        """
        "framing": "sync", "sync": "A55A", "length": 10, "fields": [ { "name": "red", "byte": 2, "bytes": 4, "byteOrder": "big" },
        { "name": "infrared", "byte": 6, "bytes": 4, "byteOrder": "big" } ]
        """);

    /// <summary>Those whose frames a wide checksum proves.</summary>
    public static IReadOnlyList<WireLayout> Proven { get; } = [Sync, Cobs, Slip];

    public static IReadOnlyList<WireLayout> All { get; } = [Sync, Cobs, Slip, Text, PlainText, Unproven];

    public static WireLayout Binary(string members) => Parse($$""" "binary": { {{members}} } """);

    public static WireLayout Parse(string members) => WireLayoutFile.Parse(
        Encoding.UTF8.GetBytes($$"""{ "name": "invented", "sampleRateHz": 50, "line": { "baud": 115200 }, {{members}} }"""), "hut.json");

    /// <summary>The red count of a sample tells which one it is; every value is exact in each layout.</summary>
    public static Sample SampleOf(long index) => Sample.OfLight(1000 + index, 2000 + ((index * 7919) % 200_000));

    /// <summary>What an instrument says of some samples, frame by frame.</summary>
    public static List<byte[]> Frames(WireLayout layout, long from, int count)
    {
        var encoder = new WireEncoder(layout);
        return [.. Enumerable.Range(0, count).Select(i => encoder.Say(from + i, SampleOf(from + i))).Where(frame => frame.Length > 0)];
    }

    public static int SamplesPerFrame(WireLayout layout) => layout.Binary?.SampleCount ?? 1;
}
