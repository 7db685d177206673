namespace PulseStream.Sources.Csv;

/// <summary>Tells how many samples lie between two rows of a recording.</summary>
internal abstract class RowClock
{
    /// <summary>Samples from one row to a later one: 0 for a repeat, negative for a step back.</summary>
    public abstract long Distance(RowStamp from, RowStamp to);

    /// <summary>Samples from the last row taken to this one.</summary>
    /// <param name="row">Of the row to be placed.</param>
    /// <param name="badBetween">Bad rows since the last row taken.</param>
    public abstract long DistanceTo(RowStamp row, long badBetween);

    /// <summary>Index of the first good row.</summary>
    /// <param name="row">Of that row.</param>
    /// <param name="badBefore">Bad rows before it.</param>
    public virtual long FirstIndex(RowStamp row, long badBefore) => badBefore;

    /// <summary>The row has been taken and is the last from here on.</summary>
    /// <param name="row">Of that row.</param>
    /// <param name="distance">What <see cref="DistanceTo"/> said of it; 0 for the first.</param>
    public abstract void Take(RowStamp row, long distance);

    /// <summary>Takes a row where it is the sample right after the last row taken, and none was bad in between.</summary>
    /// <param name="row">Of the row.</param>
    /// <returns>False where it is not: nothing has happened then.</returns>
    public virtual bool TryFollow(RowStamp row)
    {
        if (DistanceTo(row, 0) != 1)
        {
            return false;
        }

        Take(row, 1);
        return true;
    }
}
