using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Page.Live;

/// <summary>
/// Makes the wave that the page draws out of the samples. Blocks that follow each other faster than anybody sees are told
/// together: an instrument may hand on each sample by itself. One that sends seldom and much at once has its blocks told one
/// by one.
/// </summary>
internal sealed class WaveCutter(RecordingHeader header, TimeProvider clock)
{
    /// <summary>More updates a second than this there never are, on the average of some seconds.</summary>
    public const int MostUpdatesPerSecond = 60;

    // The wave is filtered at 12 Hz: more than ten points for its quickest part are of no use on a screen.
    private const double DrawnHz = 125;

    // What may be told at once after a pause: three tenths of a second of the shortest blocks.
    private const double MostAtOnce = 8;

    // The first one comes on top.
    private const double AllowedPerSecond = MostUpdatesPerSecond - 1;

    private const double Rounding = 1e-9;

    private readonly PlethysmogramFilter _filter = new(header);
    private readonly int _stride = Math.Max(1, (int)(header.Rate.Hz / DrawnHz));
    private readonly List<double> _heights = [];
    private long _first;
    private long _next = -1;
    private double _allowed = 1;
    private long _allowedAt = clock.GetTimestamp();

    /// <summary>The wave as far as it is due; what is not is told with a later block.</summary>
    public IReadOnlyList<PageEvent> Cut(SampleBlock block)
    {
        var told = new List<PageEvent>();
        if (block.FirstIndex != _next)
        {
            TakeHeights(told);
        }

        Filter(block);
        if (IsDue())
        {
            TakeHeights(told);
        }

        return told;
    }

    // So many a second on the average.
    private bool IsDue()
    {
        var now = clock.GetTimestamp();
        _allowed = Math.Min(MostAtOnce, _allowed + (clock.GetElapsedTime(_allowedAt, now).TotalSeconds * AllowedPerSecond));
        _allowedAt = now;
        if (_allowed < 1 - Rounding)
        {
            return false;
        }

        _allowed--;
        return true;
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
