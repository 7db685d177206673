namespace PulseStream.Sources.Csv;

/// <summary>What a column of a recording holds.</summary>
internal enum CsvColumn
{
    Sample,
    Time,
    Red,
    Infrared,
    Ambient,
    Pleth,
    AccelerationX,
    AccelerationY,
    AccelerationZ,
    Ignored,
}
