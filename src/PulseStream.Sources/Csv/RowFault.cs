namespace PulseStream.Sources.Csv;

/// <summary>Why a row is refused.</summary>
internal enum RowFault
{
    None,
    FieldCount,
    NotANumber,
    NotFinite,
    NegativeCounts,
    CounterNotWhole,
    StepBack,
    StrayJump,
    LineTooLong,
}
