namespace PulseStream.Samples;

/// <summary>What a source has counted so far.</summary>
/// <param name="Samples">Good samples handed on.</param>
/// <param name="Missing">Samples that the counter, the clock or a bad row says should have been there and were not.</param>
/// <param name="RefusedRows">Rows or frames refused: bad ones and steps back, not repeats.</param>
/// <param name="Repeats">Rows dropped because their sample had been seen already; no fault.</param>
public sealed record SampleTally(long Samples, long Missing, long RefusedRows, long Repeats)
{
    /// <summary>How many samples a second arrived by our clock, where a live source could tell; the session keeps its stated rate all the same.</summary>
    public double? ArrivalRateHz { get; init; }

    /// <summary>Nothing counted yet.</summary>
    public static SampleTally Empty { get; } = new(0, 0, 0, 0);
}
