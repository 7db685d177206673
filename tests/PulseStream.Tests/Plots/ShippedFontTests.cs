using PulseStream.Plots;
using Xunit;

namespace PulseStream.Tests.Plots;

public class ShippedFontTests
{
    // Read off the name table of the two files (Debian: fc-query Inter-Regular.otf).
    private const string Family = "Inter";

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void TheDrawingLibraryGetsTheFontOfThisAssembly(bool bold)
    {
        // Not disposed: the drawing library keeps it for every picture.
        var letters = ScottPlot.Fonts.GetTypeface(ShippedFont.Name, bold, italic: false);

        Assert.Equal(Family, letters.FamilyName);
        Assert.Equal(bold, letters.IsBold);
    }

    [Theory]
    [InlineData("SpO₂ (%) ·…▲●–0123456789äöüßéñ")]
    public void EveryLetterThatAPictureUsesIsInTheFont(string letters)
    {
        using var regular = ShippedFont.Open(isBold: false);
        using var bold = ShippedFont.Open(isBold: true);

        Assert.DoesNotContain((ushort)0, regular.GetGlyphs(letters));
        Assert.DoesNotContain((ushort)0, bold.GetGlyphs(letters));
    }

    [Fact]
    public void TheLicenceTravelsWithTheFont()
    {
        using var licence = typeof(SessionPicture).Assembly.GetManifestResourceStream("LICENSE-Inter.txt");
        using var reader = new StreamReader(licence!);
        Assert.Contains("SIL OPEN FONT LICENSE Version 1.1", reader.ReadToEnd(), StringComparison.Ordinal);
    }
}
