namespace PulseStream.Samples;

/// <summary>Consecutive samples. A jump of <paramref name="FirstIndex"/> past the end of the block before is a gap: nothing is filled in.</summary>
/// <param name="FirstIndex">Index of the first sample since the recording's start, 0 or more.</param>
/// <param name="Samples">One sample an index, never written again once handed on.</param>
public readonly record struct SampleBlock(long FirstIndex, ReadOnlyMemory<Sample> Samples)
{
    /// <summary>Index just past the last sample.</summary>
    public long EndIndex => FirstIndex + Samples.Length;
}
