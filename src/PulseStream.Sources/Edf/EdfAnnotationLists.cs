using System.Globalization;
using System.Text;

namespace PulseStream.Sources.Edf;

/// <summary>Time-stamped annotation lists of EDF+: onset, duration, texts, each list ended by a zero byte.</summary>
internal static class EdfAnnotationLists
{
    private const byte DurationMark = 0x15;
    private const byte TextMark = 0x14;

    /// <summary>The lists in the annotations of one data record; what is no list is passed over.</summary>
    public static IReadOnlyList<EdfAnnotation> Read(ReadOnlySpan<byte> bytes)
    {
        var found = new List<EdfAnnotation>();
        while (bytes.Length > 0)
        {
            var end = bytes.IndexOf((byte)0);
            var list = end < 0 ? bytes : bytes[..end];
            if (List(list) is { } annotation)
            {
                found.Add(annotation);
            }

            bytes = end < 0 ? [] : bytes[(end + 1)..];
        }

        return found;
    }

    /// <summary>Bytes of a list, its zero included.</summary>
    public static byte[] Write(EdfAnnotation annotation)
    {
        var bytes = new List<byte>();
        bytes.AddRange(Encoding.ASCII.GetBytes(annotation.OnsetSeconds.ToString("+0.#########;-0.#########", CultureInfo.InvariantCulture)));
        if (annotation.DurationSeconds is { } duration)
        {
            bytes.Add(DurationMark);
            bytes.AddRange(Encoding.ASCII.GetBytes(duration.ToString("0.#########", CultureInfo.InvariantCulture)));
        }

        bytes.Add(TextMark);
        foreach (var text in annotation.Texts.Count > 0 ? annotation.Texts : [""])
        {
            bytes.AddRange(Encoding.UTF8.GetBytes(text));
            bytes.Add(TextMark);
        }

        bytes.Add(0);
        return [.. bytes];
    }

    private static EdfAnnotation? List(ReadOnlySpan<byte> list)
    {
        var stop = list.IndexOf(TextMark);
        if (stop < 2 || list[0] is not ((byte)'+' or (byte)'-'))
        {
            return null;
        }

        var stamp = list[..stop];
        var mark = stamp.IndexOf(DurationMark);
        if (NumberOf(mark < 0 ? stamp : stamp[..mark]) is not { } onset)
        {
            return null;
        }

        var texts = Encoding.UTF8.GetString(list[(stop + 1)..]).Split((char)TextMark);
        return new EdfAnnotation(onset, mark < 0 ? null : NumberOf(stamp[(mark + 1)..]), [.. texts.Where(text => text.Length > 0)]);
    }

    private static double? NumberOf(ReadOnlySpan<byte> text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;
}
