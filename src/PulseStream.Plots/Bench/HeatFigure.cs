using ScottPlot;
using ScottPlot.TickGenerators;

namespace PulseStream.Plots.Bench;

/// <summary>Heat maps beside each other.</summary>
public static class HeatFigure
{
    private const int MostColumns = 3;
    private const int LeastSquare = 44;
    private const int MostSquares = 300;
    private const int Around = 124;
    private const float TopPixels = 60;
    private const float LetterSize = 13;
    private const float SmallSize = 10;
    private const float TitleSize = 13;
    private const double TextUp = 0.16;
    private const double SmallDown = 0.24;
    private const float OutlineThickness = 2.5f;
    private const double OutlineInset = 0.02;

    /// <summary>Draws them. The caller disposes the figure.</summary>
    /// <param name="name">Name of its file.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="x">Name and unit of the columns.</param>
    /// <param name="y">Name and unit of the rows.</param>
    /// <param name="maps">At least one.</param>
    public static Figure Of(string name, string title, string x, string y, IReadOnlyList<HeatMap> maps)
    {
        ArgumentNullException.ThrowIfNull(maps);
        var width = Around + Math.Max(MostSquares, LeastSquare * maps.Max(map => map.Columns.Count));
        var height = Around + Math.Max(MostSquares * 2 / 3, LeastSquare * maps.Max(map => map.Rows.Count));
        return new(name, title, [.. maps.Select(map => Draw(map, title, x, y))], Math.Min(MostColumns, maps.Count), (width, height));
    }

    private static Plot Draw(HeatMap map, string title, string x, string y)
    {
        var plot = FigurePlot.New($"{title}\n{map.Title}", x, y, new(-0.5, map.Columns.Count - 0.5, -0.5, map.Rows.Count - 0.5), topPixels: TopPixels);
        plot.Axes.Title.Label.FontSize = TitleSize;
        plot.Axes.Title.Label.Bold = false;
        plot.Grid.IsVisible = false;
        foreach (var cell in map.Cells)
        {
            AddSquare(plot, cell);
        }

        Name(plot.Axes.Bottom, map.Columns);
        Name(plot.Axes.Left, map.Rows);
        return plot;
    }

    private static void AddSquare(Plot plot, HeatCell cell)
    {
        var (red, green, blue) = HeatColour.At(cell.Share);
        var square = plot.Add.Rectangle(cell.Column - 0.5, cell.Column + 0.5, cell.Row - 0.5, cell.Row + 0.5);
        square.FillColor = new Color(red, green, blue);
        square.LineColor = Colors.White;
        square.LineWidth = 1;
        if (cell.IsOutlined)
        {
            var half = 0.5 - OutlineInset;
            var outline = plot.Add.Rectangle(cell.Column - half, cell.Column + half, cell.Row - half, cell.Row + half);
            outline.FillColor = Colors.Transparent;
            outline.LineColor = Palette.Ink;
            outline.LineWidth = OutlineThickness;
        }

        Write(plot, cell.Text, cell.Column, cell.Row + TextUp, LetterSize);
        Write(plot, cell.Small, cell.Column, cell.Row - SmallDown, SmallSize);
    }

    private static void Write(Plot plot, string text, double x, double y, float size)
    {
        var label = plot.Add.Text(text, x, y);
        label.LabelFontName = ShippedFont.Name;
        label.LabelFontSize = size;
        label.LabelFontColor = Palette.Ink;
        label.LabelAlignment = Alignment.MiddleCenter;
    }

    private static void Name(IAxis axis, IReadOnlyList<string> names) =>
        axis.TickGenerator = new NumericManual([.. names.Select((_, i) => (double)i)], [.. names]);
}
