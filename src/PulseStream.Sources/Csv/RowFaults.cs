namespace PulseStream.Sources.Csv;

/// <summary>Counts bad rows by cause, names the first of each with its line, and sums up at the end.</summary>
internal sealed class RowFaults(string source, Action<string>? say)
{
    private readonly long[] _counts = new long[Enum.GetValues<RowFault>().Length];
    private readonly long[] _firstLines = new long[Enum.GetValues<RowFault>().Length];

    public long Total { get; private set; }

    /// <summary>Whether no row has had this fault yet: only then are its details worth telling.</summary>
    public bool IsFirst(RowFault fault) => _counts[(int)fault] == 0;

    public void Add(RowFault fault, long line, string detail)
    {
        if (IsFirst(fault))
        {
            _firstLines[(int)fault] = line;
            say?.Invoke($"{source}, line {line}: row refused, {Words(fault)}{(detail.Length == 0 ? "" : $": {detail}")}; further ones are counted.");
        }

        _counts[(int)fault]++;
        Total++;
    }

    /// <summary>Says how many rows of each cause there were, where there were any.</summary>
    public void SayCounts()
    {
        if (Total > 0)
        {
            say?.Invoke($"{source}: bad rows refused: {Total} ({Counts()}).");
        }
    }

    /// <summary>The counts by cause with the line of the first: "2 not a number from line 7 on".</summary>
    public string Counts() =>
        string.Join(", ", Enum.GetValues<RowFault>().Where(fault => _counts[(int)fault] > 0)
            .Select(fault => $"{_counts[(int)fault]} {Words(fault)} from line {_firstLines[(int)fault]} on"));

    private static string Words(RowFault fault) => fault switch
    {
        RowFault.FieldCount => "wrong number of fields",
        RowFault.NotANumber => "not a number",
        RowFault.NotFinite => "not finite",
        RowFault.NegativeCounts => "negative counts",
        RowFault.CounterNotWhole => "sample counter not a whole number from 0 on",
        RowFault.StepBack => "step back",
        RowFault.StrayJump => "jump over more than an hour that the next row does not confirm",
        RowFault.LineTooLong => "line too long",
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "No fault has no words."),
    };
}
