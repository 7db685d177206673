namespace PulseStream.Sources.Csv;

/// <summary>Neither counter nor times: rows follow each other, and bad ones take their places.</summary>
internal sealed class RowCountClock : RowClock
{
    public override long Distance(in CsvRow from, in CsvRow to) => 1;

    public override long DistanceTo(in CsvRow row, long badBetween) => badBetween + 1;

    public override void Take(in CsvRow row, long distance)
    {
        // The rows themselves are the clock.
    }
}
