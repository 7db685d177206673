using PulseStream.Plots.Bench;

namespace PulseStream.Cli.Output.Bench;

/// <summary>Writes figures, each as PNG and SVG.</summary>
internal static class FigureFiles
{
    public static void Write(string folder, IReadOnlyList<Figure> figures)
    {
        foreach (var figure in figures)
        {
            WrittenFile.Write(Path.Combine(folder, figure.Name + ".png"), figure.ToPng());
            WrittenFile.Write(Path.Combine(folder, figure.Name + ".svg"), figure.ToSvg());
        }
    }
}
