using System.Text;
using PulseStream.Archive.Columns;
using PulseStream.Archive.Results;

namespace PulseStream.Archive.Journaling;

/// <summary>
/// Rows of one kind of result between two commits, as the journal holds them: one value for all of them, because a
/// statement for each costs more than judging the second that it tells of.
/// </summary>
internal sealed class RowPack : IDisposable
{
    private readonly MemoryStream bytes = new();
    private readonly BinaryWriter writer;

    /// <summary>An empty pack.</summary>
    public RowPack() => writer = new(bytes, Encoding.UTF8);

    /// <summary>Adds a row.</summary>
    /// <param name="table">What it is.</param>
    /// <param name="row">Its values.</param>
    public void Add(ResultTable table, Cell[] row)
    {
        for (var i = 0; i < row.Length; i++)
        {
            if (table.Columns[i].Kind == CellKind.Text)
            {
                writer.Write(row[i].Text!);
            }
            else
            {
                writer.Write(row[i].Number);
            }
        }
    }

    /// <summary>What was added since the last time; empty where nothing was.</summary>
    public byte[] Take()
    {
        writer.Flush();
        var taken = bytes.ToArray();
        bytes.SetLength(0);
        return taken;
    }

    /// <summary>Nothing to let go of but memory.</summary>
    public void Dispose() => writer.Dispose();

    /// <summary>The rows of a pack in order.</summary>
    /// <param name="table">What they are.</param>
    /// <param name="pack">As it was taken.</param>
    /// <exception cref="IOException">The pack ends within a row.</exception>
    /// <exception cref="FormatException">A text's length is none.</exception>
    public static IReadOnlyList<Cell[]> RowsOf(ResultTable table, byte[] pack)
    {
        using var reader = new BinaryReader(new MemoryStream(pack), Encoding.UTF8);
        var rows = new List<Cell[]>();
        while (reader.BaseStream.Position < pack.Length)
        {
            var row = new Cell[table.Columns.Count];
            for (var i = 0; i < row.Length; i++)
            {
                row[i] = table.Columns[i].Kind == CellKind.Text ? reader.ReadString() : reader.ReadDouble();
            }

            rows.Add(row);
        }

        return rows;
    }
}
