using System.Globalization;
using PulseStream.Archive.Columns;

namespace PulseStream.Archive.Sealing;

/// <summary>A row as one text: numbers as short as they read back equal, nothing where there is none. No text of such a row holds a comma.</summary>
internal static class RowText
{
    private const char Separator = ',';

    /// <summary>The text of a row.</summary>
    /// <param name="row">Its cells.</param>
    public static string Of(Cell[] row) =>
        string.Join(Separator, row.Select(cell => cell.Text ?? cell.Known?.ToString("R", CultureInfo.InvariantCulture) ?? ""));

    /// <summary>The cells of a text.</summary>
    /// <param name="text">As <see cref="Of"/> gave it.</param>
    /// <param name="kinds">Of its cells.</param>
    /// <exception cref="FormatException">It is no such row.</exception>
    public static Cell[] Cells(string text, IEnumerable<CellKind> kinds)
    {
        var parts = text.Split(Separator);
        Cell[] cells = [.. kinds.Zip(parts, (kind, part) => kind == CellKind.Text ? part : part.Length == 0 ? double.NaN : (Cell)double.Parse(part, CultureInfo.InvariantCulture))];
        return cells.Length == parts.Length ? cells : throw new FormatException($"{parts.Length} cells, expected {cells.Length}");
    }
}
