using System.Buffers.Binary;
using System.Text;

namespace PulseStream.Tests.Sources.Wfdb;

/// <summary>The obvious reader of MIT annotations: WFDB Applications Guide, annot(5).</summary>
internal static class MitAnnotations
{
    public static IReadOnlyList<(long Index, int Kind, string Text)> Read(ReadOnlySpan<byte> bytes)
    {
        var found = new List<(long Index, int Kind, string Text)>();
        var (at, time) = (0, 0L);
        while (Word(bytes, at) is var word && word != 0)
        {
            at += 2;
            var (kind, low) = (word >> 10, word & 0x3FF);
            switch (kind)
            {
                case 59:
                    time += (int)(((uint)Word(bytes, at) << 16) | Word(bytes, at + 2));
                    at += 4;
                    break;
                case 63:
                    found[^1] = found[^1] with { Text = Encoding.UTF8.GetString(bytes.Slice(at, low)).TrimEnd('\0') };
                    at += low + (low % 2);
                    break;
                default:
                    time += low;
                    found.Add((time, kind, ""));
                    break;
            }
        }

        return found;
    }

    private static ushort Word(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt16LittleEndian(bytes[at..]);
}
