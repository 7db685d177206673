namespace PulseStream.Signal;

/// <summary>
/// What was said of the pairs of the last windows: a rhythm stays for longer than a window's noise. Windows that share most of
/// their beats and differ over them are not believed either way.
/// </summary>
internal sealed class PairCourse
{
    // As long as the longest window: none of an older one's beats are in the newest.
    private const int Newer = 8;

    // The windows before those share no beat with the newest: chance that goes one way in all of the ones hardly does so in the others.
    private const int Kept = 16;

    // Of nine windows one may differ.
    private const double MajorityShare = 0.8;

    // One window of eight may see a wave that was none; two that did not know what it was were not sure.
    private const int LeastUnsure = 2;

    // Seen twice, second waves at half the period are known.
    private const int LeastEven = 2;
    private const int LeastKnown = 4;

    // Chance makes one window in twenty of beats without a rhythm look so.
    private const int LeastUneven = 3;
    private readonly PairKind[] kinds = new PairKind[Kept];
    private readonly bool[] areEven = new bool[Newer];
    private readonly bool[] areUneven = new bool[Newer];
    private readonly bool[] areAsLikelyBeats = new bool[Newer];
    private int next;

    /// <summary>How the delays of the pairs went with their intervals.</summary>
    public DelayCourse Delays { get; } = new();

    /// <summary>Whether second waves came at half the period.</summary>
    public bool IsEvenKnown => areEven.AsSpan().Count(true) >= LeastEven;

    /// <summary>Whether second waves of beats without a rhythm were seen in the last windows.</summary>
    public bool IsUnevenKnown => areUneven.AsSpan().Count(true) >= LeastUneven;

    /// <summary>Whether pairs were seen in most of the last windows.</summary>
    public bool IsKnown => Newer - CountOf(PairKind.None, 1) >= LeastKnown;

    /// <summary>Whether second waves were as likely beats in windows that share beats with this one.</summary>
    public bool WereAsLikelyBeats => areAsLikelyBeats.AsSpan().Count(true) >= LeastUnsure;

    /// <summary>Forgets all.</summary>
    public void Restart()
    {
        Delays.Restart();
        kinds.AsSpan().Clear();
        areEven.AsSpan().Clear();
        areUneven.AsSpan().Clear();
        areAsLikelyBeats.AsSpan().Clear();
    }

    /// <summary>Takes the verdict on the newest window.</summary>
    /// <param name="kind">What it is.</param>
    /// <param name="isEven">Whether second waves come at half the period.</param>
    /// <param name="isUneven">Whether they come without a rhythm.</param>
    /// <param name="isAsLikelyBeats">Whether second waves are as likely beats.</param>
    public void Take(PairKind kind, bool isEven, bool isUneven = false, bool isAsLikelyBeats = false)
    {
        kinds[next] = kind;
        areEven[next % Newer] = isEven;
        areUneven[next % Newer] = isUneven;
        areAsLikelyBeats[next % Newer] = isAsLikelyBeats;
        next = (next + 1) % Kept;
    }

    /// <summary>The verdict on a window in the light of those before it.</summary>
    public PairKind Settle(PairKind kind)
    {
        if (kind == PairKind.None)
        {
            return kind;
        }

        return Majority(1, kind);
    }

    /// <summary>Whether waves that do not show now may have been beats in windows that share beats with this one.</summary>
    public bool WasUnsure => CountOf(PairKind.Either, 1) >= LeastUnsure;

    /// <summary>Whether second waves that are settled on now were as likely beats before.</summary>
    public bool IsDoubtful => Majority(1 + Newer, PairKind.None) == PairKind.Either;

    // None where none of those windows has pairs.
    private PairKind Majority(int newest, PairKind own)
    {
        var seconds = CountOf(PairKind.SecondWave, newest) + (own == PairKind.SecondWave ? 1 : 0);
        var early = CountOf(PairKind.EarlyBeat, newest) + (own == PairKind.EarlyBeat ? 1 : 0);
        var all = seconds + early + CountOf(PairKind.Either, newest) + (own == PairKind.Either ? 1 : 0);
        return all == 0 ? PairKind.None
            : seconds >= MajorityShare * all ? PairKind.SecondWave
            : early >= MajorityShare * all ? PairKind.EarlyBeat
            : PairKind.Either;
    }

    private int CountOf(PairKind kind, int newest)
    {
        var count = 0;
        for (var back = newest; back < newest + Newer; back++)
        {
            count += kinds[(next - back + Kept) % Kept] == kind ? 1 : 0;
        }

        return count;
    }
}
