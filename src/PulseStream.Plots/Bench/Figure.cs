using System.Text;
using ScottPlot;

namespace PulseStream.Plots.Bench;

/// <summary>One figure of the bench, as PNG and SVG.</summary>
public sealed class Figure : IDisposable
{
    private const int Width = 900;
    private const int Height = 560;

    // Twice the pixels: sharp in print and on fine screens.
    private const float Scale = 2;

    // An SVG names its font and does not hold it: where it is missing the letters stay plain.
    private const string FontOfSvg = "font-family=\"Inter\"";
    private const string FontsOfSvg = "font-family=\"Inter, Helvetica, Arial, 'Liberation Sans', sans-serif\"";

    private readonly Plot plot;

    internal Figure(string name, string title, Plot plot) => (Name, Title, this.plot) = (name, title, plot);

    /// <summary>Name of its file, without extension.</summary>
    public string Name { get; }

    /// <summary>What it shows.</summary>
    public string Title { get; }

    /// <summary>The figure as PNG.</summary>
    public byte[] ToPng()
    {
        plot.ScaleFactor = Scale;
        return plot.GetImageBytes((int)(Width * Scale), (int)(Height * Scale), ImageFormat.Png);
    }

    /// <summary>The figure as SVG, in UTF-8.</summary>
    public byte[] ToSvg()
    {
        plot.ScaleFactor = 1;
        return Encoding.UTF8.GetBytes(plot.GetSvgXml(Width, Height).Replace(FontOfSvg, FontsOfSvg, StringComparison.Ordinal));
    }

    /// <inheritdoc/>
    public void Dispose() => plot.Dispose();
}
