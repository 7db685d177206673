using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Page.Live;

/// <summary>
/// Makes the wave that the page draws out of the samples. Blocks that follow each other faster than anybody sees are told
/// together: an instrument may hand on each sample by itself.
/// </summary>
internal sealed class WaveCutter(RecordingHeader header, TimeProvider clock)
{
    /// <summary>More updates a second than this there never are.</summary>
    public const int MostUpdatesPerSecond = 60;

    // The wave is filtered at 12 Hz: more than ten points for its quickest part are of no use on a screen.
    private const double DrawnHz = 125;

    // Below a frame of most screens, so that blocks at 30 a second are never held back, even where one comes early.
    private static readonly TimeSpan ShortestPause = TimeSpan.FromSeconds(1.0 / MostUpdatesPerSecond);

    private readonly PlethysmogramFilter _filter = new(header);
    private readonly int _stride = Math.Max(1, (int)(header.Rate.Hz / DrawnHz));
    private readonly List<double> _heights = [];
    private long _first;
    private long _next = -1;
    private long? _toldAt;

    /// <summary>The wave as far as it is due; what is not is told with a later block.</summary>
    public IReadOnlyList<PageEvent> Cut(SampleBlock block)
    {
        var told = new List<PageEvent>();
        if (block.FirstIndex != _next)
        {
            TakeHeights(told);
        }

        Filter(block);
        if (_toldAt is not { } before || clock.GetElapsedTime(before) >= ShortestPause)
        {
            TakeHeights(told);
            _toldAt = clock.GetTimestamp();
        }

        return told;
    }

    private void Filter(SampleBlock block)
    {
        _next = block.FirstIndex;
        foreach (ref readonly var sample in block.Samples.Span)
        {
            var height = _filter.Step(_next, sample);
            if (_next % _stride == 0)
            {
                _first = _heights.Count == 0 ? _next : _first;
                _heights.Add(height);
            }

            _next++;
        }
    }

    private void TakeHeights(List<PageEvent> told)
    {
        if (_heights.Count > 0)
        {
            told.Add(PageMessage.Wave(_first, _stride, _heights));
            _heights.Clear();
        }
    }
}
