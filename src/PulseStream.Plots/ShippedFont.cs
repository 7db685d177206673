using ScottPlot;
using SkiaSharp;

namespace PulseStream.Plots;

/// <summary>
/// The font of every picture, from this assembly: the same letters on every machine, and letters at all on one without
/// fonts. Inter, SIL Open Font License 1.1; its text is among the resources.
/// </summary>
internal sealed class ShippedFont : IFontResolver
{
    /// <summary>Its name in the drawing library; no installed font is called so.</summary>
    private const string FamilyName = "PulseStream Inter";

    private static readonly SKData Regular = Load("Inter-Regular.otf");
    private static readonly SKData Bold = Load("Inter-Bold.otf");

    private ShippedFont()
    {
    }

    /// <summary>Its name in the drawing library, which is told of the font before anybody can ask for it.</summary>
    public static string Name { get; } = Register();

    /// <summary>The letters. The caller disposes them.</summary>
    /// <param name="isBold">Bold or regular.</param>
    public static SKTypeface Open(bool isBold) => SKTypeface.FromData(isBold ? Bold : Regular);

    /// <inheritdoc/>
    public SKTypeface? CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) =>
        CreateTypeface(fontName, weight >= FontWeight.SemiBold, slant != FontSlant.Upright);

    /// <inheritdoc/>
    public SKTypeface? CreateTypeface(string fontName, bool bold, bool italic) =>
        string.Equals(fontName, FamilyName, StringComparison.Ordinal) ? Open(bold) : null;

    private static string Register()
    {
        ScottPlot.Fonts.FontResolvers.Insert(0, new ShippedFont());
        return FamilyName;
    }

    private static SKData Load(string resource)
    {
        using var stream = typeof(ShippedFont).Assembly.GetManifestResourceStream(resource)!;
        return SKData.Create(stream);
    }
}
