using PulseStream.Plots;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Tests.Archive;
using SkiaSharp;
using Xunit;

namespace PulseStream.Tests.Plots;

public class SessionPictureTests
{
    public static TheoryData<string> Names => [.. Situations.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void EverySituationIsDrawnTwiceToTheSameBytes(string name)
    {
        using var archive = new TemporaryArchive();
        var folder = Situations.All[name](archive.Folder);

        var first = Png(folder);

        Assert.Equal(first, Png(folder));
        using var picture = SKBitmap.Decode(first);
        Assert.Equal((1200, 1000), (picture.Width, picture.Height));
        Keep(name, first);
    }

    [Fact]
    public async Task PicturesDrawnSideBySideAreTheSameBytes()
    {
        using var archive = new TemporaryArchive();
        var folder = Situations.All["many-reasons"](archive.Folder);

        var pictures = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => Png(folder), TestContext.Current.CancellationToken)));

        Assert.All(pictures, picture => Assert.Equal(pictures[0], picture));
    }

    [Theory]
    [InlineData("the headline", 20, 15, 300, 40)]
    [InlineData("the small print", 20, 975, 600, 995)]
    [InlineData("the name of the strip's first row", 20, 680, 124, 704)]
    [InlineData("the times", 120, 926, 1190, 944)]
    [InlineData("the saturations", 60, 310, 124, 480)]
    [InlineData("the title of the plethysmogram", 128, 78, 380, 98)]
    public void TextIsThere(string what, int left, int top, int right, int bottom)
    {
        using var archive = new TemporaryArchive();
        using var picture = SKBitmap.Decode(Png(Situations.All["many-reasons"](archive.Folder)));

        var darkPixels = 0;
        for (var y = top; y < bottom; y++)
        {
            for (var x = left; x < right; x++)
            {
                darkPixels += picture.GetPixel(x, y).Green < 128 ? 1 : 0;
            }
        }

        // Three letters of the smallest size have more than sixty dark pixels; without a font there are none.
        Assert.True(darkPixels > 60, $"{what}: {darkPixels} dark pixels");
    }

    [Theory]
    [InlineData(900, 800)]
    [InlineData(1600, 800)]
    [InlineData(2400, 2000)]
    public void ThePictureHasTheSizeAskedFor(int width, int height)
    {
        using var archive = new TemporaryArchive();
        var png = Png(Situations.All["many-reasons"](archive.Folder), new PictureSize(width, height));

        Keep($"many-reasons-{width}x{height}", png);
        using var picture = SKBitmap.Decode(png);
        Assert.Equal((width, height), (picture.Width, picture.Height));
    }

    [Theory]
    [InlineData(899, 1000)]
    [InlineData(1200, 799)]
    [InlineData(8001, 1000)]
    public void ASizeThatCannotHoldThePanelsIsRefused(int width, int height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PictureSize(width, height));

    [Fact]
    public void AFolderThatIsNoSessionIsASentence()
    {
        using var archive = new TemporaryArchive();
        Assert.Throws<BadInputException>(() => Png(archive.Folder));
    }

    [Theory]
    [InlineData("samples.parquet")]
    [InlineData("seconds.parquet")]
    public void ASessionThatWasChangedIsNotDrawn(string file)
    {
        using var archive = new TemporaryArchive();
        var folder = Situations.All["quiet"](archive.Folder);
        var path = Path.Combine(folder, file);
        var bytes = File.ReadAllBytes(path);
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(path, bytes);

        using var png = new MemoryStream();
        Assert.Throws<BadInputException>(() => SessionPicture.Draw(folder, png));
        Assert.Equal(0, png.Length);
    }

    [Fact]
    public void ThePictureSeesTheSaturation()
    {
        using var archive = new TemporaryArchive();
        var high = new InventedSession(archive.Folder, InventedSession.TwoLights).Usable(20, 97).Seal(new("high"));
        var low = new InventedSession(archive.Folder, InventedSession.TwoLights).Usable(20, 87).Seal(new("low"));

        Assert.NotEqual(Png(high), Png(low));
    }

    // What refuses a second for weakness is drawn; of movement or a leak it says nothing of the blood.
    [Theory]
    [InlineData(Reasons.LowPerfusion, false)]
    [InlineData(Reasons.Motion, true)]
    public void ThePictureSeesThePerfusion(Reasons refused, bool isSame)
    {
        byte[] Drawn(double usable, double weak)
        {
            using var archive = new TemporaryArchive();
            return Png(new InventedSession(archive.Folder, InventedSession.TwoLights).Usable(20, 97, perfusionPercent: usable).Refused(10, refused, weak).Seal());
        }

        Assert.NotEqual(Drawn(2, 0.1), Drawn(1.5, 0.1));
        Assert.Equal(isSame, Drawn(2, 0.1).AsSpan().SequenceEqual(Drawn(2, 1.5)));
    }

    // Pictures have to be looked at: with PULSESTREAM_PICTURES set to a folder they are kept there.
    private static void Keep(string name, byte[] png)
    {
        if (Environment.GetEnvironmentVariable("PULSESTREAM_PICTURES") is { Length: > 0 } folder)
        {
            File.WriteAllBytes(Path.Combine(folder, name + ".png"), png);
        }
    }

    private static byte[] Png(string folder, PictureSize? size = null)
    {
        using var png = new MemoryStream();
        SessionPicture.Draw(folder, png, size);
        return png.ToArray();
    }
}
