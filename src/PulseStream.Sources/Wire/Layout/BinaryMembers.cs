using PulseStream.Sources.Csv;

namespace PulseStream.Sources.Wire.Layout;

/// <summary>Reads the member `binary` of a layout file.</summary>
internal static class BinaryMembers
{
    // Longer than any frame of an oximeter; keeps what garbage can make us hold small.
    private const int LongestFrame = 4096;
    private const int LongestSync = 16;
    private const int MostBytes = 4;

    // Beyond any unit; keeps a slip from making infinite values.
    private const double LargestFactor = 1e12;

    public static BinaryLayout Read(LayoutMembers members)
    {
        members.AllowOnly("framing", "sync", "length", "checksum", "samples", "fields");
        var kind = members.OneOf("framing", isNeeded: true, "sync", "cobs", "slip") switch
        {
            "sync" => FrameKind.Sync,
            "cobs" => FrameKind.Cobs,
            _ => FrameKind.Slip,
        };
        var (count, first, stride) = ReadSamples(members);
        var fields = members.List("fields").Select(field => ReadField(members.Entry(field.Path, field.Entry))).ToArray();
        var checksum = members.Has("checksum") ? ReadChecksum(members.Object("checksum")) : ChecksumRule.None;
        var end = Math.Max(checksum.End, fields.Max(field => field.Byte + field.Bytes + (field.IsPerFrame ? 0 : first + ((count - 1) * stride))));
        var layout = new BinaryLayout(kind, ReadSync(members, kind), ReadLength(members, kind, end), checksum, count, first, stride, fields);
        if (layout.Length < end || layout.Length < layout.Sync.Length)
        {
            throw members.Wrong("length", $"expected at least the {Math.Max(end, layout.Sync.Length)} bytes that sync, checksum, samples and fields reach to, found {layout.Length}");
        }

        return layout;
    }

    private static byte[] ReadSync(LayoutMembers members, FrameKind kind)
    {
        if (kind != FrameKind.Sync && members.Has("sync"))
        {
            throw members.Wrong("sync", "expected sync bytes with the framing 'sync' alone");
        }

        return kind == FrameKind.Sync ? members.Hex("sync", LongestSync) : [];
    }

    // Stuffed frames end by themselves: their length is that of what they carry, unless told.
    private static int ReadLength(LayoutMembers members, FrameKind kind, int end) =>
        members.Whole("length", 1, LongestFrame, kind == FrameKind.Sync ? null : end);

    private static (int Count, int First, int Stride) ReadSamples(LayoutMembers members)
    {
        if (!members.Has("samples"))
        {
            return (1, 0, 0);
        }

        var samples = members.Object("samples");
        samples.AllowOnly("count", "first", "stride");
        var count = samples.Whole("count", 1, LongestFrame, 1);
        return (count, samples.Whole("first", 0, LongestFrame, 0), samples.Whole("stride", count > 1 ? 1 : 0, LongestFrame, count > 1 ? null : 0));
    }

    private static ChecksumRule ReadChecksum(LayoutMembers members)
    {
        members.AllowOnly("kind", "byte", "byteOrder", "from", "to");
        var kind = Checksum.Named(members.OneOf("kind", isNeeded: true, Checksum.Names));
        if (kind == ChecksumKind.None)
        {
            return ChecksumRule.None;
        }

        var at = members.Whole("byte", 0, LongestFrame);
        var from = members.Whole("from", 0, LongestFrame);
        var to = members.Whole("to", 0, LongestFrame);
        if (to <= from)
        {
            throw members.Wrong("to", $"expected more than 'from', {from}, found {to}");
        }

        return at + Checksum.BytesOf(kind) <= from || at >= to
            ? new ChecksumRule(kind, at, IsBigEndian(members, Checksum.BytesOf(kind)), from, to)
            : throw members.Wrong("byte", $"expected a place outside the bytes from {from} to {to} that it covers, found {at}");
    }

    private static WireField ReadField(LayoutMembers members)
    {
        members.AllowOnly("name", "byte", "bytes", "byteOrder", "mask", "signed", "scale", "add", "perFrame");
        var column = FieldColumns.Named(members.OneOf("name", isNeeded: true, FieldColumns.Names));
        var bytes = members.Whole("bytes", 1, MostBytes);
        var scale = members.Number("scale", -LargestFactor, LargestFactor, 1);
        var isSigned = members.IsTrue("signed");
        if (scale == 0 || (column == CsvColumn.Sample && (scale < 1 || Math.Floor(scale) != scale)))
        {
            throw members.Wrong("scale", column == CsvColumn.Sample ? $"expected a whole number, 1 or more, for a counter, found {scale}" : "expected a factor other than 0, found 0");
        }

        if (column == CsvColumn.Sample && isSigned)
        {
            throw members.Wrong("signed", "expected a counter without sign, found true");
        }

        return new WireField(
            column, members.Whole("byte", 0, LongestFrame), bytes, IsBigEndian(members, bytes), members.Mask("mask", bytes), isSigned, scale,
            members.Number("add", -LargestFactor, LargestFactor, 0), members.IsTrue("perFrame"));
    }

    // One byte has no order; several have none that goes without saying.
    private static bool IsBigEndian(LayoutMembers members, int bytes) =>
        members.OneOf("byteOrder", isNeeded: bytes > 1, "little", "big") == "big";
}
