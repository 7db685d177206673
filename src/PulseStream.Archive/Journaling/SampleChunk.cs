using System.Runtime.InteropServices;
using PulseStream.Samples;

namespace PulseStream.Archive.Journaling;

/// <summary>
/// Consecutive samples as the journal holds them: column after column, each as 32-bit whole numbers where all of its
/// values are whole, else as doubles. Little-endian, as every machine is that .NET runs on.
/// </summary>
/// <param name="FirstIndex">Index of the first sample.</param>
/// <param name="Count">How many.</param>
/// <param name="WholeChannels">One bit a channel, from the lowest: its values are whole numbers.</param>
/// <param name="Bytes">The columns that the recording has, in the order of <see cref="WireNames.Channels"/>.</param>
internal sealed record SampleChunk(long FirstIndex, int Count, int WholeChannels, byte[] Bytes)
{
    // A sample is seven doubles side by side; a test holds the order against the channels.
    public static readonly int Stride = WireNames.Channels.Count;

    /// <summary>Packs samples.</summary>
    /// <param name="firstIndex">Index of the first.</param>
    /// <param name="samples">Consecutive ones.</param>
    /// <param name="channels">Channels that the recording has.</param>
    public static SampleChunk Of(long firstIndex, ReadOnlySpan<Sample> samples, IReadOnlyList<int> channels)
    {
        // Most light is counts: what is asked for at first is no more than those take, and so no large object.
        var bytes = new byte[samples.Length * sizeof(int) * channels.Count];
        var doubles = MemoryMarshal.Cast<Sample, double>(samples);
        var whole = 0;
        var length = 0;
        for (var n = 0; n < channels.Count; n++)
        {
            var strided = doubles[channels[n]..];
            if (TryPackWhole(strided, samples.Length, bytes.AsSpan(length)))
            {
                whole |= 1 << channels[n];
                length += samples.Length * sizeof(int);
            }
            else
            {
                Array.Resize(ref bytes, bytes.Length + (samples.Length * (sizeof(double) - sizeof(int))));
                Pack(strided, samples.Length, bytes.AsSpan(length));
                length += samples.Length * sizeof(double);
            }
        }

        return new(firstIndex, samples.Length, whole, bytes);
    }

    /// <summary>Unpacks one channel.</summary>
    /// <param name="channels">Channels that the recording has.</param>
    /// <param name="channel">The one wanted.</param>
    /// <param name="values">One value a sample.</param>
    public void CopyTo(IReadOnlyList<int> channels, int channel, Span<double> values)
    {
        if (!IsWhole(channel))
        {
            Column<double>(channels, channel).CopyTo(values);
            return;
        }

        var whole = Column<int>(channels, channel);
        for (var i = 0; i < whole.Length; i++)
        {
            values[i] = whole[i];
        }
    }

    /// <summary>Unpacks one channel whose values are whole numbers, a negative zero among them.</summary>
    /// <param name="channels">Channels that the recording has.</param>
    /// <param name="channel">The one wanted.</param>
    /// <param name="values">One value a sample.</param>
    public void CopyTo(IReadOnlyList<int> channels, int channel, Span<int> values)
    {
        if (IsWhole(channel))
        {
            Column<int>(channels, channel).CopyTo(values);
            return;
        }

        var plain = Column<double>(channels, channel);
        for (var i = 0; i < plain.Length; i++)
        {
            values[i] = (int)plain[i];
        }
    }

    private static bool TryPackWhole(ReadOnlySpan<double> strided, int count, Span<byte> bytes)
    {
        var whole = MemoryMarshal.Cast<byte, int>(bytes);
        for (var i = 0; i < count; i++)
        {
            var value = strided[i * Stride];

            // NaN and what does not fit fail here; the bits tell a negative zero, which must come back as one.
            if (!(value >= int.MinValue && value <= int.MaxValue) || BitConverter.DoubleToInt64Bits((double)(int)value) != BitConverter.DoubleToInt64Bits(value))
            {
                return false;
            }

            whole[i] = (int)value;
        }

        return true;
    }

    private static void Pack(ReadOnlySpan<double> strided, int count, Span<byte> bytes)
    {
        var doubles = MemoryMarshal.Cast<byte, double>(bytes);
        for (var i = 0; i < count; i++)
        {
            doubles[i] = strided[i * Stride];
        }
    }

    private ReadOnlySpan<T> Column<T>(IReadOnlyList<int> channels, int channel)
        where T : unmanaged
    {
        var offset = channels.TakeWhile(c => c != channel).Sum(c => Count * (IsWhole(c) ? sizeof(int) : sizeof(double)));
        return MemoryMarshal.Cast<byte, T>(Bytes.AsSpan(offset))[..Count];
    }

    private bool IsWhole(int channel) => (WholeChannels & (1 << channel)) != 0;
}
