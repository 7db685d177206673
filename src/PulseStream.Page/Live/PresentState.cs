namespace PulseStream.Page.Live;

/// <summary>What has been told so far, as far as somebody who joins now has to know it.</summary>
internal sealed class PresentState
{
    // Eight seconds of wave, which is what the page draws.
    private const int LongestWave = 8 * WaveCutter.MostUpdatesPerSecond;

    // More than any bedside sees in a day.
    private const int LongestHistory = 50;

    private static readonly string[] OnceEach = [PageNames.Session, PageNames.Link, PageNames.Person, PageNames.Feeling, PageNames.Unkept];

    private readonly Dictionary<string, PageEvent> _last = new(StringComparer.Ordinal);
    private readonly Queue<PageEvent> _history = new();
    private readonly Queue<PageEvent> _wave = new();

    public void Take(PageEvent told)
    {
        switch (told.Name)
        {
            case PageNames.Wave:
                Keep(_wave, told, LongestWave);
                break;
            case PageNames.Reading or PageNames.Sitting:
                Keep(_history, told, LongestHistory);
                break;
            case PageNames.Link when told != PageMessage.Link(PageLink.Receiving):
                // Whoever joins a silent line must not see the numbers of before.
                _last.Remove(PageNames.Second);
                _last[told.Name] = told;
                break;
            default:
                _last[told.Name] = told;
                break;
        }
    }

    /// <summary>What is known, in an order in which it can be taken in.</summary>
    public IEnumerable<PageEvent> Events() =>
    [
        .. OnceEach.Where(_last.ContainsKey).Select(name => _last[name]),
        .. _wave,
        .. _history,
        .. new[] { PageNames.Advice, PageNames.Second }.Where(_last.ContainsKey).Select(name => _last[name]),
    ];

    private static void Keep(Queue<PageEvent> queue, PageEvent told, int longest)
    {
        queue.Enqueue(told);
        if (queue.Count > longest)
        {
            queue.Dequeue();
        }
    }
}
