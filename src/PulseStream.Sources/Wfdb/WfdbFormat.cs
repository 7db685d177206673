namespace PulseStream.Sources.Wfdb;

/// <summary>How samples lie in bytes (signal(5) of the WFDB Applications Guide).</summary>
/// <param name="Number">Name of the format.</param>
/// <param name="GroupBytes">Bytes that belong together.</param>
/// <param name="GroupSamples">Samples in them.</param>
/// <param name="Invalid">The value that stands for no sample; null where there is none.</param>
internal sealed record WfdbFormat(int Number, int GroupBytes, int GroupSamples, int? Invalid)
{
    private static readonly WfdbFormat[] All =
    [
        new(8, 1, 1, null),
        new(16, 2, 1, short.MinValue),
        new(24, 3, 1, -(1 << 23)),
        new(32, 4, 1, int.MinValue),
        new(61, 2, 1, short.MinValue),
        new(80, 1, 1, -128),
        new(160, 2, 1, short.MinValue),
        new(212, 3, 2, -(1 << 11)),
        new(310, 4, 3, -(1 << 9)),
        new(311, 4, 3, -(1 << 9)),
    ];

    /// <summary>Whether samples are differences to the one before.</summary>
    public bool IsDifference => Number == 8;

    /// <summary>The format of a name; null where it is not read here.</summary>
    public static WfdbFormat? Of(int number) => Array.Find(All, format => format.Number == number);

    /// <summary>All names with commas.</summary>
    public static string Names { get; } = string.Join(", ", All.Select(format => format.Number));

    /// <summary>How many samples of a group so many of its bytes hold: a file may end within one.</summary>
    public int SamplesIn(int bytes) => bytes == GroupBytes ? GroupSamples : GroupSamples > 1 && bytes >= 2 ? 1 : 0;

    /// <summary>Decodes a group.</summary>
    /// <param name="b">Its bytes; those behind the end of the file are 0.</param>
    /// <param name="samples">As many as <see cref="GroupSamples"/>.</param>
    public void Decode(ReadOnlySpan<byte> b, Span<int> samples)
    {
        switch (Number)
        {
            case 8:
                samples[0] = unchecked((sbyte)b[0]);
                break;
            case 16:
                samples[0] = SignExtended(b[0] | (b[1] << 8), 16);
                break;
            case 24:
                samples[0] = SignExtended(b[0] | (b[1] << 8) | (b[2] << 16), 24);
                break;
            case 32:
                samples[0] = b[0] | (b[1] << 8) | (b[2] << 16) | (b[3] << 24);
                break;
            case 61:
                samples[0] = SignExtended(b[1] | (b[0] << 8), 16);
                break;
            case 80:
                samples[0] = b[0] - 128;
                break;
            case 160:
                samples[0] = (b[0] | (b[1] << 8)) - 32768;
                break;
            case 212:
                samples[0] = SignExtended(b[0] | ((b[1] & 0x0F) << 8), 12);
                samples[1] = SignExtended(b[2] | ((b[1] & 0xF0) << 4), 12);
                break;
            default:
                DecodeTenBits(b, samples);
                break;
        }
    }

    private void DecodeTenBits(ReadOnlySpan<byte> b, Span<int> samples)
    {
        var (low, high) = (b[0] | (b[1] << 8), b[2] | (b[3] << 8));
        if (Number == 310)
        {
            samples[0] = SignExtended(low >> 1, 10);
            samples[1] = SignExtended(high >> 1, 10);
            samples[2] = SignExtended((low >> 11) | ((high >> 11) << 5), 10);
        }
        else
        {
            samples[0] = SignExtended(low, 10);
            samples[1] = SignExtended((low >> 10) | (high << 6), 10);
            samples[2] = SignExtended(high >> 4, 10);
        }
    }

    private static int SignExtended(int value, int bits) => unchecked(value << (32 - bits)) >> (32 - bits);
}
