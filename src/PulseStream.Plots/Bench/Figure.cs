using System.Text;
using ScottPlot;
using SkiaSharp;

namespace PulseStream.Plots.Bench;

/// <summary>One figure of the bench, of one plot or of several beside each other, as PNG and SVG.</summary>
public sealed class Figure : IDisposable
{
    // Twice the pixels: sharp in print and on fine screens.
    private const float Scale = 2;

    private static readonly (int Width, int Height) Usual = (900, 560);

    private readonly Plot[] plots;
    private readonly int columns;
    private readonly (int Width, int Height) each;

    internal Figure(string name, string title, Plot plot)
        : this(name, title, [plot], 1, Usual)
    {
    }

    internal Figure(string name, string title, Plot[] plots, int columns, (int Width, int Height) each) =>
        (Name, Title, this.plots, this.columns, this.each) = (name, title, plots, columns, each);

    /// <summary>Name of its file, without extension.</summary>
    public string Name { get; }

    /// <summary>What it shows.</summary>
    public string Title { get; }

    private int Width => columns * each.Width;

    private int Height => (plots.Length + columns - 1) / columns * each.Height;

    /// <summary>The figure as PNG.</summary>
    public byte[] ToPng()
    {
        using var surface = SKSurface.Create(new SKImageInfo((int)(Width * Scale), (int)(Height * Scale)));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(Scale);
        Draw(surface.Canvas);
        using var image = surface.Snapshot();
        using var png = image.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }

    /// <summary>The figure as SVG, in UTF-8, its letters as outlines.</summary>
    public byte[] ToSvg()
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, Height), stream))
        {
            canvas.Clear(SKColors.White);
            Draw(canvas);
        }

        return Encoding.UTF8.GetBytes(SvgLetters.Outlined(Encoding.UTF8.GetString(stream.ToArray()), Title));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var plot in plots)
        {
            plot.Dispose();
        }
    }

    private void Draw(SKCanvas canvas)
    {
        foreach (var (i, plot) in plots.Index())
        {
            // It would wipe away the plots before it.
            plot.RenderManager.ClearCanvasBeforeEachRender = false;
            var (left, top) = (i % columns * each.Width, i / columns * each.Height);
            plot.Render(canvas, new PixelRect(left, left + each.Width, top + each.Height, top));
        }
    }
}
