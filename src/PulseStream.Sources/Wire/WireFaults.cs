namespace PulseStream.Sources.Wire;

/// <summary>Counts refused frames by cause.</summary>
internal sealed class WireFaults
{
    private readonly long[] _counts = new long[Enum.GetValues<WireFault>().Length];

    public long Total => _counts.Sum();

    public long this[WireFault fault] => _counts[(int)fault];

    public void Add(WireFault fault, long frames) => _counts[(int)fault] += frames;

    /// <summary>The counts by cause: "2 checksum wrong, 1 wrong length".</summary>
    public string Words() => string.Join(", ", Enum.GetValues<WireFault>().Where(fault => this[fault] > 0).Select(fault => $"{this[fault]} {WordsOf(fault)}"));

    private static string WordsOf(WireFault fault) => fault switch
    {
        WireFault.Garbage => "bytes where no frame begins",
        WireFault.Checksum => "checksum wrong",
        WireFault.Length => "wrong length",
        WireFault.Stuffing => "framing broken",
        WireFault.NotANumber => "not a number",
        WireFault.NegativeCounts => "negative counts",
        WireFault.StrayCounter => "counter not confirmed",
        _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "No fault has no words."),
    };
}
