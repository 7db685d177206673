using SkiaSharp;

namespace PulseStream.Plots;

/// <summary>Writes text around the panels. Sizes and places are in pixels; a line's place is its baseline.</summary>
internal sealed class Lettering(SKCanvas canvas) : IDisposable
{
    private const string Ellipsis = "…";

    private readonly SKTypeface regular = ShippedFont.Open(isBold: false);
    private readonly SKTypeface bold = ShippedFont.Open(isBold: true);

    /// <summary>Width of a line.</summary>
    /// <param name="text">The line.</param>
    /// <param name="size">Letter size.</param>
    /// <param name="isBold">Bold or regular.</param>
    public float WidthOf(string text, float size, bool isBold)
    {
        using var font = FontOf(size, isBold);
        return font.MeasureText(text);
    }

    /// <summary>Writes a line.</summary>
    /// <param name="text">The line.</param>
    /// <param name="x">Left end.</param>
    /// <param name="baseline">Where the letters stand.</param>
    /// <param name="size">Letter size.</param>
    /// <param name="isBold">Bold or regular.</param>
    /// <param name="colour">Colour.</param>
    /// <returns>Where the line ends.</returns>
    public float Write(string text, float x, float baseline, float size, bool isBold, ScottPlot.Color colour)
    {
        using var font = FontOf(size, isBold);
        using var paint = new SKPaint { Color = new SKColor(colour.ARGB), IsAntialias = true };
        canvas.DrawText(text, x, baseline, SKTextAlign.Left, font, paint);
        return x + font.MeasureText(text);
    }

    /// <summary>Cuts parts into lines that are not wider than told; a part that is too wide by itself loses its middle.</summary>
    /// <param name="parts">What stays together.</param>
    /// <param name="separator">Between parts of one line.</param>
    /// <param name="width">Width of a line.</param>
    /// <param name="size">Letter size.</param>
    /// <param name="isBold">Bold or regular.</param>
    public IReadOnlyList<string> Wrap(IEnumerable<string> parts, string separator, float width, float size, bool isBold)
    {
        var lines = new List<string>();
        foreach (var part in parts.Select(p => Shortened(p, width, size, isBold)))
        {
            var joined = lines.Count == 0 ? part : lines[^1] + separator + part;
            if (lines.Count > 0 && WidthOf(joined, size, isBold) <= width)
            {
                lines[^1] = joined;
            }
            else
            {
                lines.Add(part);
            }
        }

        return lines;
    }

    /// <summary>A line that is not wider than told: its middle is left out where it must be.</summary>
    /// <param name="text">The line.</param>
    /// <param name="width">Width.</param>
    /// <param name="size">Letter size.</param>
    /// <param name="isBold">Bold or regular.</param>
    public string Shortened(string text, float width, float size, bool isBold)
    {
        var shown = text;
        for (var kept = text.Length - 1; kept > 1 && WidthOf(shown, size, isBold) > width; kept--)
        {
            shown = text[..((kept + 1) / 2)] + Ellipsis + text[^(kept / 2)..];
        }

        return shown;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        regular.Dispose();
        bold.Dispose();
    }

    // Hinting snaps letters to pixels by the machine's settings; without it they are the same everywhere.
    private SKFont FontOf(float size, bool isBold) =>
        new(isBold ? bold : regular, size) { Hinting = SKFontHinting.None, Subpixel = true, Edging = SKFontEdging.Antialias };
}
