using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Page.Live;

/// <summary>Makes the wave that the page draws out of the samples.</summary>
internal sealed class WaveCutter(RecordingHeader header)
{
    // The wave is filtered at 12 Hz: more than ten points for its quickest part are of no use on a screen.
    private const double DrawnHz = 125;

    private readonly PlethysmogramFilter _filter = new(header);
    private readonly int _stride = Math.Max(1, (int)(header.Rate.Hz / DrawnHz));

    /// <summary>The part of the wave that a block holds.</summary>
    public PageEvent Cut(SampleBlock block)
    {
        var heights = new List<double>();
        var first = -1L;
        var index = block.FirstIndex;
        foreach (ref readonly var sample in block.Samples.Span)
        {
            var height = _filter.Step(index, sample);
            if (index % _stride == 0)
            {
                first = first < 0 ? index : first;
                heights.Add(height);
            }

            index++;
        }

        return PageMessage.Wave(Math.Max(first, 0), _stride, heights);
    }
}
