namespace PulseStream.Sources.Csv;

/// <summary>What a <see cref="LineReader"/> came upon.</summary>
internal enum LineKind
{
    Line,
    TooLong,
    End,
}
