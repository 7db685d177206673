using PulseStream.Samples;

namespace PulseStream.Archive.Columns;

/// <summary>What the writer and the reader of a Parquet file agree on.</summary>
internal static class ColumnFile
{
    /// <summary>
    /// Rows of a full row group: ten minutes at 100 Hz. Groups of one minute wrote a third slower and took 4 % more room
    /// (measured in a trial on 18-bit counts with noise); much larger ones only cost memory.
    /// </summary>
    public const int RowsPerGroup = 60_000;

    /// <summary>Key of the hash in a column chunk's metadata.</summary>
    public const string HashKey = "xxh3";

    /// <summary>Key of the number of rows in the file's own metadata, which stands behind the row groups in the footer.</summary>
    public const string RowsKey = "rows";

    /// <summary>Key of the sample rate in Hz, in the metadata of a file that stands alone.</summary>
    public const string RateKey = "sampleRateHz";

    /// <summary>Key of the start, likewise.</summary>
    public const string StartKey = "start";

    // A damaged footer may claim any number of rows; memory is asked for only up to this.
    private const int MostRowsPerGroup = 1 << 20;

    /// <summary>Says that a file cannot be believed.</summary>
    /// <param name="path">The file.</param>
    /// <param name="problem">What was found, without a full stop.</param>
    /// <param name="innerException">What a library threw, where one did.</param>
    public static BadInputException Damaged(string path, string problem, Exception? innerException = null) =>
        new(path, problem, "Restore the session's folder from a copy or leave the session out", innerException);

    /// <summary>Rows of a group, refused where no writer of ours makes such a group.</summary>
    /// <param name="path">The file.</param>
    /// <param name="rows">What the footer says.</param>
    public static int RowsOf(string path, long rows) => rows is >= 0 and <= MostRowsPerGroup
        ? (int)rows
        : throw Damaged(path, $"a row group claims {rows} rows, expected at most {MostRowsPerGroup}");
}
