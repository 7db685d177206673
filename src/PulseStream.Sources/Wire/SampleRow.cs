using PulseStream.Samples;
using PulseStream.Sources.Csv;

namespace PulseStream.Sources.Wire;

/// <summary>The values of one instant by column, and the sample that they make; what is not carried is NaN.</summary>
internal static class SampleRow
{
    public static bool HasNegativeCounts(ReadOnlySpan<double> row) =>
        row[(int)CsvColumn.Red] < 0 || row[(int)CsvColumn.Infrared] < 0 || row[(int)CsvColumn.Ambient] < 0;

    public static Sample SampleOf(ReadOnlySpan<double> row) => new(
        row[(int)CsvColumn.Red],
        row[(int)CsvColumn.Infrared],
        row[(int)CsvColumn.Ambient],
        row[(int)CsvColumn.Pleth],
        row[(int)CsvColumn.AccelerationX],
        row[(int)CsvColumn.AccelerationY],
        row[(int)CsvColumn.AccelerationZ]);

    public static double ValueOf(CsvColumn column, in Sample sample) => column switch
    {
        CsvColumn.Red => sample.Red,
        CsvColumn.Infrared => sample.Infrared,
        CsvColumn.Ambient => sample.Ambient,
        CsvColumn.Pleth => sample.Pleth,
        CsvColumn.AccelerationX => sample.AccelerationX,
        CsvColumn.AccelerationY => sample.AccelerationY,
        CsvColumn.AccelerationZ => sample.AccelerationZ,
        _ => 0,
    };
}
