namespace PulseStream.Archive.Columns;

/// <summary>How a column of results is stored.</summary>
internal enum CellKind
{
    /// <summary>INT64, null where not known.</summary>
    Whole = 0,

    /// <summary>DOUBLE, null where not known.</summary>
    Decimal,

    /// <summary>BOOLEAN, never null.</summary>
    Flag,

    /// <summary>STRING, never null.</summary>
    Text,

    /// <summary>TIMESTAMP in microseconds, adjusted to UTC, never null; the number is microseconds since 1970.</summary>
    Instant,
}
