using System.Globalization;
using System.Xml.Linq;
using SkiaSharp;

namespace PulseStream.Plots.Bench;

/// <summary>Draws the letters of an SVG as outlines of the shipped font: they look the same where no font is installed.</summary>
internal static class SvgLetters
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>The same picture without text. What was written stays as a label, for a screen reader.</summary>
    /// <param name="xml">An SVG as the drawing library writes it: a place for each letter.</param>
    /// <param name="title">What the picture shows.</param>
    public static string Outlined(string xml, string title)
    {
        var document = XDocument.Parse(xml, LoadOptions.PreserveWhitespace);
        var root = document.Root!;
        root.SetAttributeValue("viewBox", $"0 0 {root.Attribute("width")!.Value} {root.Attribute("height")!.Value}");
        root.SetAttributeValue("role", "img");
        root.AddFirst(new XElement(Svg + "title", title));
        using var regular = new SKFont { Typeface = ShippedFont.Open(isBold: false), Hinting = SKFontHinting.None };
        using var bold = new SKFont { Typeface = ShippedFont.Open(isBold: true), Hinting = SKFontHinting.None };
        foreach (var text in root.Descendants(Svg + "text").ToArray())
        {
            text.ReplaceWith(Outline(text, text.Attribute("font-weight") is null ? regular : bold));
        }

        return root.ToString(SaveOptions.DisableFormatting);
    }

    private static XElement Outline(XElement text, SKFont font)
    {
        font.Size = Numbers(text, "font-size")[0];
        var letters = text.Value.Trim('\n', '\r', '\t');
        var (x, y) = (Numbers(text, "x"), Numbers(text, "y"));
        using var outline = new SKPath();
        foreach (var (i, glyph) in font.GetGlyphs(letters).Index())
        {
            using var path = font.GetGlyphPath(glyph);
            if (path is not null)
            {
                outline.AddPath(path, x[Math.Min(i, x.Length - 1)], y[Math.Min(i, y.Length - 1)]);
            }
        }

        return new(
            Svg + "path",
            text.Attributes().Where(attribute => attribute.Name.LocalName is "fill" or "fill-opacity" or "transform"),
            new XAttribute("role", "img"),
            new XAttribute("aria-label", letters),
            new XAttribute("d", outline.ToSvgPathData()));
    }

    private static float[] Numbers(XElement text, string name) =>
    [
        .. (text.Attribute(name)?.Value ?? "0").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(number => float.Parse(number, CultureInfo.InvariantCulture)),
    ];
}
