namespace PulseStream.Comparison;

/// <summary>Which results of two runs belong to the same recording.</summary>
internal static class Pairing
{
    /// <summary>
    /// Pairs results: the same person, date and session of two archives, else the same name of the source, and where
    /// several have that name, in the order in which they were told.
    /// </summary>
    /// <param name="a">Results of the first run.</param>
    /// <param name="b">Results of the second run.</param>
    public static IReadOnlyList<(RecordingResults? A, RecordingResults? B)> Of(IReadOnlyList<RecordingResults> a, IReadOnlyList<RecordingResults> b)
    {
        var pairs = new List<(RecordingResults? A, RecordingResults? B)>();
        var (restA, restB) = BySession(a, b, pairs);
        ByName(restA, restB, pairs);
        var names = pairs.Select(NameOf).CountBy(name => name, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        return [.. pairs.Select(pair => names[NameOf(pair)] == 1 ? pair : (NamedBySession(pair.A), NamedBySession(pair.B)))];
    }

    private static (List<RecordingResults> A, List<RecordingResults> B) BySession(
        IReadOnlyList<RecordingResults> a, IReadOnlyList<RecordingResults> b, List<(RecordingResults?, RecordingResults?)> pairs)
    {
        var known = b.Where(results => results.Session is not null).DistinctBy(results => results.Session, StringComparer.Ordinal).ToDictionary(results => results.Session!, StringComparer.Ordinal);
        var (rest, paired) = (new List<RecordingResults>(), new HashSet<RecordingResults>(ReferenceEqualityComparer.Instance));
        foreach (var one in a)
        {
            if (one.Session is { } session && known.Remove(session, out var other))
            {
                pairs.Add((one, other));
                paired.Add(other);
            }
            else
            {
                rest.Add(one);
            }
        }

        return (rest, [.. b.Where(results => !paired.Contains(results))]);
    }

    private static void ByName(List<RecordingResults> a, List<RecordingResults> b, List<(RecordingResults?, RecordingResults?)> pairs)
    {
        var known = b.GroupBy(Key, StringComparer.Ordinal).ToDictionary(group => group.Key, group => new Queue<RecordingResults>(group), StringComparer.Ordinal);
        foreach (var one in a)
        {
            pairs.Add((one, known.TryGetValue(Key(one), out var others) && others.TryDequeue(out var other) ? other : null));
        }

        pairs.AddRange(known.Values.SelectMany(rest => rest).Select(alone => ((RecordingResults?)null, (RecordingResults?)alone)));
    }

    private static string Key(RecordingResults results) => RecordingName.KeyOf(results.Source);

    private static string NameOf((RecordingResults? A, RecordingResults? B) pair) => (pair.A ?? pair.B)!.Name;

    // Two nights of one file name are told apart by what the archive calls them.
    private static RecordingResults? NamedBySession(RecordingResults? results) =>
        results?.Session is { } session ? results with { Source = session } : results;
}
