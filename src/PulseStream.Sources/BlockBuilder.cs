using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using PulseStream.Samples;

namespace PulseStream.Sources;

/// <summary>Gathers samples into blocks of a length, a quarter of a second where none is told, and shorter ones before a gap.</summary>
internal sealed class BlockBuilder(SampleRate rate, double longestSeconds = 0.25)
{
    // An array of less than 2 KB is cleared however it is asked for: some blocks share one that is larger.
    private const int LeastArrayBytes = 4096;

    // Rounding must not make 0.04 s at 25 Hz less than one sample.
    private readonly int _length = Math.Max(1, (int)((longestSeconds * rate.Hz) + 1e-9));
    private readonly Queue<SampleBlock> _finished = new();
    private Sample[] _samples = [];
    private int _start;
    private int _count;
    private long _firstIndex;

    /// <summary>Samples added so far.</summary>
    public long Count { get; private set; }

    /// <summary>Samples that the block under way, or the next, still has room for.</summary>
    public int Room => _length - _count;

    public bool HasFinished => _finished.Count > 0;

    public void Add(long index, in Sample sample) => Add(index, MemoryMarshal.Cast<Sample, double>(new ReadOnlySpan<Sample>(in sample)));

    /// <summary>Adds a sample.</summary>
    /// <param name="index">Its index.</param>
    /// <param name="values">What a <see cref="Sample"/> holds, in its order.</param>
    public void Add(long index, ReadOnlySpan<double> values)
    {
        if (_count > 0 && index != _firstIndex + _count)
        {
            Finish();
        }

        if (_count == 0)
        {
            _firstIndex = index;
            if (_samples.Length - _start < _length)
            {
                var blockBytes = _length * Unsafe.SizeOf<Sample>();
                _samples = GC.AllocateUninitializedArray<Sample>(_length * (1 + (LeastArrayBytes / blockBytes)));
                _start = 0;
            }
        }

        _samples[_start + _count++] = MemoryMarshal.Cast<double, Sample>(values)[0];
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
            _finished.Enqueue(new SampleBlock(_firstIndex, _samples.AsMemory(_start, _count)));
            _start += _count;
            _count = 0;
        }
    }

    public SampleBlock? TakeFinished() => _finished.TryDequeue(out var block) ? block : null;
}
