using Parquet;
using Parquet.Schema;

namespace PulseStream.Sweeps;

/// <summary>Writes every recording of a sweep as Parquet, a row each.</summary>
public static class RunsFile
{
    private static readonly (string Name, Func<SweepRun, double?> Of)[] Columns =
    [
        .. SweepPoint.Names.Select((name, i) => (name, (Func<SweepRun, double?>)(run => Known(run.Point.Values[i])))),
        ("run", run => run.Number),
        ("seconds", run => run.Seconds),
        ("usedSeconds", run => run.Used),
        ("bias", run => run.Used == 0 ? null : run.ErrorSum / run.Used),
        ("arms", run => run.Used == 0 ? null : Math.Sqrt(run.SquareSum / run.Used)),
        ("pulseArms", run => run.PulseUsed == 0 ? null : Math.Sqrt(run.PulseSquareSum / run.PulseUsed)),
        ("readings", run => run.Readings),
        ("readingArms", run => run.Readings == 0 ? null : Math.Sqrt(run.ReadingSquareSum / run.Readings)),
        ("wrong", run => run.Wrong),
        ("first", run => run.FirstSeconds),
    ];

    /// <summary>The file's bytes.</summary>
    /// <param name="runs">All recordings.</param>
    public static byte[] Format(IReadOnlyList<SweepRun> runs)
    {
        using var stream = new MemoryStream();

        // Memory is written at once: every task of the library has ended when it is handed back.
        WriteAsync(stream, runs).GetAwaiter().GetResult();
        return stream.ToArray();
    }

    private static async Task WriteAsync(MemoryStream stream, IReadOnlyList<SweepRun> runs)
    {
        DataField[] fields = [.. Columns.Select(column => new DataField(column.Name, typeof(double), isNullable: true))];
        await using var writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), stream, new ParquetOptions { CompressionMethod = CompressionMethod.Zstd });
        using var group = writer.CreateRowGroup();
        foreach (var (field, column) in fields.Zip(Columns))
        {
            double?[] values = [.. runs.Select(column.Of)];
            await group.WriteAsync<double>(field, values, null, null);
        }

        group.CompleteValidate();
    }

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
