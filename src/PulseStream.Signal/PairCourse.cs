namespace PulseStream.Signal;

/// <summary>
/// What was said of the pairs of the last windows: a rhythm stays for longer than a window's noise. Windows that share most of
/// their beats and differ over them are not believed either way.
/// </summary>
internal sealed class PairCourse
{
    // As long as the longest window: none of an older one's beats are in the newest.
    private const int Kept = 8;

    // Of nine windows one may differ.
    private const double MajorityShare = 0.8;

    // Seen twice, second waves at half the period are known.
    private const int LeastEven = 2;
    private const int LeastKnown = 4;
    private readonly PairKind[] kinds = new PairKind[Kept];
    private readonly bool[] areEven = new bool[Kept];
    private int next;

    /// <summary>Whether second waves came at half the period.</summary>
    public bool IsEvenKnown => areEven.AsSpan().Count(true) >= LeastEven;

    /// <summary>Whether pairs were seen in most of the last windows.</summary>
    public bool IsKnown => Kept - kinds.AsSpan().Count(PairKind.None) >= LeastKnown;

    /// <summary>Forgets all.</summary>
    public void Restart()
    {
        kinds.AsSpan().Clear();
        areEven.AsSpan().Clear();
    }

    /// <summary>Takes the verdict on the newest window.</summary>
    public void Take(PairKind kind, bool isEven)
    {
        kinds[next] = kind;
        areEven[next] = isEven;
        next = (next + 1) % Kept;
    }

    /// <summary>The verdict on a window in the light of those before it.</summary>
    public PairKind Settle(PairKind kind)
    {
        if (kind == PairKind.None)
        {
            return kind;
        }

        var seconds = kinds.AsSpan().Count(PairKind.SecondWave) + (kind == PairKind.SecondWave ? 1 : 0);
        var early = kinds.AsSpan().Count(PairKind.EarlyBeat) + (kind == PairKind.EarlyBeat ? 1 : 0);
        var all = seconds + early + kinds.AsSpan().Count(PairKind.Either) + (kind == PairKind.Either ? 1 : 0);
        return seconds >= MajorityShare * all ? PairKind.SecondWave
            : early >= MajorityShare * all ? PairKind.EarlyBeat
            : PairKind.Either;
    }
}
