namespace PulseStream.Comparison;

/// <summary>Which readings of two runs are the same one: those accepted closest in time, a few seconds apart at most.</summary>
internal static class ReadingPairs
{
    /// <summary>Pairs readings, closest first; each belongs to one pair at most.</summary>
    /// <param name="a">Readings of the one run, in order.</param>
    /// <param name="b">Readings of the other, in order.</param>
    /// <param name="withinSeconds">How far apart the two of a pair may be.</param>
    public static IReadOnlyList<(AcceptedValue A, AcceptedValue B)> Of(IReadOnlyList<AcceptedValue> a, IReadOnlyList<AcceptedValue> b, long withinSeconds)
    {
        var candidates = new List<(long Apart, int A, int B)>();
        var from = 0;
        for (var i = 0; i < a.Count; i++)
        {
            while (from < b.Count && b[from].Second < a[i].Second - withinSeconds)
            {
                from++;
            }

            for (var j = from; j < b.Count && b[j].Second <= a[i].Second + withinSeconds; j++)
            {
                candidates.Add((Math.Abs(b[j].Second - a[i].Second), i, j));
            }
        }

        var (takenA, takenB) = (new bool[a.Count], new bool[b.Count]);
        var pairs = new List<(AcceptedValue, AcceptedValue)>();
        foreach (var (_, i, j) in candidates.Order())
        {
            if (!takenA[i] && !takenB[j])
            {
                (takenA[i], takenB[j]) = (true, true);
                pairs.Add((a[i], b[j]));
            }
        }

        return pairs;
    }
}
