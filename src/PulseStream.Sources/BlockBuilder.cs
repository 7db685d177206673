using PulseStream.Samples;

namespace PulseStream.Sources;

/// <summary>Gathers samples into blocks of a quarter of a second, and shorter ones before a gap.</summary>
internal sealed class BlockBuilder(SampleRate rate)
{
    // A quarter of a second keeps a live view lively, and a block of the quickest sensor small.
    private const double BlockSeconds = 0.25;

    private readonly int _length = (int)Math.Ceiling(BlockSeconds * rate.Hz);
    private readonly Queue<SampleBlock> _finished = new();
    private Sample[] _samples = [];
    private int _count;
    private long _firstIndex;

    /// <summary>Samples added so far.</summary>
    public long Count { get; private set; }

    public void Add(long index, in Sample sample)
    {
        if (_count > 0 && index != _firstIndex + _count)
        {
            Finish();
        }

        if (_count == 0)
        {
            _firstIndex = index;
            _samples = new Sample[_length];
        }

        _samples[_count++] = sample;
        Count++;
        if (_count == _length)
        {
            Finish();
        }
    }

    /// <summary>Closes the block that is under way, where there is one.</summary>
    public void Finish()
    {
        if (_count > 0)
        {
            _finished.Enqueue(new SampleBlock(_firstIndex, _samples.AsMemory(0, _count)));
            _count = 0;
        }
    }

    public SampleBlock? TakeFinished() => _finished.TryDequeue(out var block) ? block : null;
}
