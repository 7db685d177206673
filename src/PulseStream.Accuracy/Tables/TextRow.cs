using System.Globalization;
using PulseStream.Samples;

namespace PulseStream.Accuracy.Tables;

/// <summary>One row of a table.</summary>
/// <param name="table">Where it stands.</param>
/// <param name="line">Line of the file, from 1.</param>
/// <param name="fields">Its fields in the order of the header.</param>
public sealed class TextRow(TextTable table, int line, string[] fields)
{
    private const string Remedy = "Correct or remove the row and run again";

    /// <summary>Line of the file, from 1.</summary>
    public int Line => line;

    /// <summary>A text of a column; null where the table has no such column or the field is empty.</summary>
    /// <param name="column">Name of the column.</param>
    public string? TextOrNull(string column) =>
        table.FieldOf(column) is { } at && fields[at].Length > 0 ? fields[at] : null;

    /// <summary>A text that is not empty.</summary>
    /// <param name="column">Name of the column.</param>
    /// <exception cref="BadInputException">It is empty.</exception>
    public string Text(string column) => TextOrNull(column)
        ?? throw Wrong($"expected a text in column '{column}', found nothing");

    /// <summary>A number within limits.</summary>
    /// <param name="column">Name of the column.</param>
    /// <param name="from">Least value.</param>
    /// <param name="to">Largest value.</param>
    /// <exception cref="BadInputException">It is no number or outside the limits.</exception>
    public double Number(string column, double from, double to) =>
        NumberOrNull(column, from, to) ?? throw Wrong($"expected a number from {from} to {to} in column '{column}', found nothing");

    /// <summary>A number within limits; null where the field is empty.</summary>
    /// <param name="column">Name of the column.</param>
    /// <param name="from">Least value.</param>
    /// <param name="to">Largest value.</param>
    /// <exception cref="BadInputException">It is no number or outside the limits.</exception>
    public double? NumberOrNull(string column, double from, double to) =>
        TextOrNull(column) is not { } text ? null
        : double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number >= from && number <= to ? number
        : throw Wrong($"expected a number from {from} to {to} in column '{column}', found '{TextTable.Shown(text)}'");

    /// <summary>A complaint about the row.</summary>
    /// <param name="problem">What was expected and found.</param>
    public BadInputException Wrong(string problem) => new($"{table.Place}, line {line}", problem, Remedy);
}
