using PulseStream.Plots;
using PulseStream.Tests.Archive;
using SkiaSharp;
using Xunit;

namespace PulseStream.Tests.Plots;

public class SessionPictureTests
{
    public static TheoryData<string> Names => [.. Situations.All.Keys];

    /// <summary>With PULSESTREAM_PICTURES set to a folder the pictures are kept there to be looked at.</summary>
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
        if (Environment.GetEnvironmentVariable("PULSESTREAM_PICTURES") is { Length: > 0 } kept)
        {
            File.WriteAllBytes(Path.Combine(kept, name + ".png"), first);
        }
    }

    private static byte[] Png(string folder, PictureSize? size = null)
    {
        using var png = new MemoryStream();
        SessionPicture.Draw(folder, png, size);
        return png.ToArray();
    }
}
