namespace PulseStream.Comparison;

/// <summary>Which recordings of two runs belong together.</summary>
public static class Pairing
{
    /// <summary>
    /// Pairs recordings: the same person, date and session of two archives, else the same name of the source, and where
    /// several have that name, in the order in which they were told.
    /// </summary>
    /// <param name="a">Recordings of the first run.</param>
    /// <param name="b">Recordings of the second run.</param>
    public static IReadOnlyList<(ListedRecording? A, ListedRecording? B)> Of(IReadOnlyList<ListedRecording> a, IReadOnlyList<ListedRecording> b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var pairs = new List<(ListedRecording? A, ListedRecording? B)>();
        var (restA, restB) = BySession(a, b, pairs);
        ByName(restA, restB, pairs);
        return pairs;
    }

    private static (List<ListedRecording> A, List<ListedRecording> B) BySession(
        IReadOnlyList<ListedRecording> a, IReadOnlyList<ListedRecording> b, List<(ListedRecording?, ListedRecording?)> pairs)
    {
        var known = new Dictionary<string, ListedRecording>(StringComparer.Ordinal);
        foreach (var listed in b)
        {
            if (listed.Session is { } session)
            {
                known.TryAdd(session, listed);
            }
        }

        var (rest, paired) = (new List<ListedRecording>(), new HashSet<ListedRecording>(ReferenceEqualityComparer.Instance));
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

        return (rest, [.. b.Where(listed => !paired.Contains(listed))]);
    }

    private static void ByName(List<ListedRecording> a, List<ListedRecording> b, List<(ListedRecording?, ListedRecording?)> pairs)
    {
        var known = b.GroupBy(Key, StringComparer.Ordinal).ToDictionary(group => group.Key, group => new Queue<ListedRecording>(group), StringComparer.Ordinal);
        foreach (var one in a)
        {
            pairs.Add((one, known.Count > 0 && known.TryGetValue(Key(one), out var others) && others.TryDequeue(out var other) ? other : null));
        }

        pairs.AddRange(known.Values.SelectMany(rest => rest).Select(alone => ((ListedRecording?)null, (ListedRecording?)alone)));
    }

    private static string Key(ListedRecording listed) => RecordingName.KeyOf(listed.Source);
}
