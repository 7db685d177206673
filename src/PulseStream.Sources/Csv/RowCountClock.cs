namespace PulseStream.Sources.Csv;

/// <summary>Neither counter nor times: rows follow each other, and bad ones take their places.</summary>
internal sealed class RowCountClock : RowClock
{
    public override long Distance(RowStamp from, RowStamp to) => 1;

    public override long DistanceTo(RowStamp row, long badBetween) => badBetween + 1;

    public override void Take(RowStamp row, long distance)
    {
        // The rows themselves are the clock.
    }
}
