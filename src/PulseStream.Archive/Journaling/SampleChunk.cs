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
        var bytes = new byte[samples.Length * sizeof(double) * channels.Count];
        var doubles = MemoryMarshal.Cast<Sample, double>(samples);
        var whole = 0;
        var length = 0;
        foreach (var channel in channels)
        {
            if (TryPackWhole(doubles[channel..], samples.Length, bytes.AsSpan(length)))
            {
                whole |= 1 << channel;
                length += samples.Length * sizeof(int);
            }
            else
            {
                Pack(doubles[channel..], samples.Length, bytes.AsSpan(length));
                length += samples.Length * sizeof(double);
            }
        }

        return new(firstIndex, samples.Length, whole, length == bytes.Length ? bytes : bytes[..length]);
    }

    /// <summary>Unpacks one channel.</summary>
    /// <param name="channels">Channels that the recording has.</param>
    /// <param name="channel">The one wanted.</param>
    /// <param name="values">One value a sample.</param>
    public void CopyTo(IReadOnlyList<int> channels, int channel, Span<double> values)
    {
        var offset = channels.TakeWhile(c => c != channel).Sum(c => Count * (IsWhole(c) ? sizeof(int) : sizeof(double)));
        if (!IsWhole(channel))
        {
            MemoryMarshal.Cast<byte, double>(Bytes.AsSpan(offset))[..Count].CopyTo(values);
            return;
        }

        var whole = MemoryMarshal.Cast<byte, int>(Bytes.AsSpan(offset))[..Count];
        for (var i = 0; i < whole.Length; i++)
        {
            values[i] = whole[i];
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

    private bool IsWhole(int channel) => (WholeChannels & (1 << channel)) != 0;
}
