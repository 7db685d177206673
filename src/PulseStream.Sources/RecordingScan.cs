using PulseStream.Samples;
using PulseStream.Sources.Signals;

namespace PulseStream.Sources;

/// <summary>
/// What a format of whole numbers has to know before the first sample is written: limits, decimals and length. It is read
/// off the recording in a first reading, so that no recording has to fit into memory.
/// </summary>
public sealed class RecordingScan
{
    private readonly Dictionary<Channel, ChannelRange> _ranges;

    /// <summary>Starts before the first sample.</summary>
    /// <param name="columns">What the samples carry.</param>
    public RecordingScan(SampleColumns columns) => _ranges = Channels.Of(columns).ToDictionary(channel => channel, _ => new ChannelRange());

    /// <summary>Index just past the last sample.</summary>
    public long EndIndex { get; private set; }

    /// <summary>Good samples.</summary>
    public long Samples { get; private set; }

    /// <summary>One bit a member of <see cref="Sample"/>, from the lowest: every value is there and is a whole number of 32 bits.</summary>
    public int WholeChannels => _ranges.Where(pair => pair.Value.IsWhole32).Aggregate(0, (all, pair) => all | (1 << (int)pair.Key));

    internal IReadOnlyDictionary<Channel, ChannelRange> Ranges => _ranges;

    /// <summary>Takes note of samples.</summary>
    /// <param name="block">Follows the block before it.</param>
    public void Add(SampleBlock block)
    {
        (EndIndex, Samples) = (block.EndIndex, Samples + block.Samples.Length);
        foreach (ref readonly var sample in block.Samples.Span)
        {
            foreach (var (channel, range) in _ranges)
            {
                range.Add(Channels.ValueOf(in sample, channel));
            }
        }
    }
}
