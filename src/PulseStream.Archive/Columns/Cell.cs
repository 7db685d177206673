namespace PulseStream.Archive.Columns;

/// <summary>One value of a row of results: a number, where NaN stands for null, or a text.</summary>
/// <param name="Number">The number; NaN where it is not known.</param>
/// <param name="Text">The text of a text column.</param>
internal readonly record struct Cell(double Number, string? Text = null)
{
    /// <summary>A number, or null where it is not known.</summary>
    public double? Known => double.IsNaN(Number) ? null : Number;

    /// <summary>A whole number, or null where it is not known.</summary>
    public int? KnownWhole => double.IsNaN(Number) ? null : (int)Number;

    public static implicit operator Cell(double number) => new(number);

    public static implicit operator Cell(double? number) => new(number ?? double.NaN);

    public static implicit operator Cell(string text) => new(double.NaN, text);
}
