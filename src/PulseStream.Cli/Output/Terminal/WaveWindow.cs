using System.Text;
using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Cli.Output.Terminal;

/// <summary>The last seconds of the plethysmogram in rows of text, eight dots a character where the terminal has them.</summary>
internal sealed class WaveWindow
{
    // What one breath and some beats fit into.
    private const double ShownSeconds = 8;

    // A character of the Unicode block Braille Patterns is two dots wide and four high.
    private const int DotsWide = 2;
    private const int DotsHigh = 4;
    private const char NoDots = '\u2800';

    // A flat line must stay flat: less than this share of the light is not drawn larger.
    private const double LeastSwingPercent = 0.05;

    private readonly PlethysmogramFilter filter;
    private readonly double[] heights;
    private long nextIndex;

    public WaveWindow(RecordingHeader header)
    {
        filter = new(header);
        heights = new double[(int)(ShownSeconds * header.Rate.Hz)];
        heights.AsSpan().Fill(double.NaN);
    }

    /// <summary>Takes the samples of a block.</summary>
    public void See(SampleBlock block)
    {
        // A gap shows as a gap, and one longer than the window empties it.
        for (var gap = Math.Max(nextIndex, block.FirstIndex - heights.Length); gap < block.FirstIndex; gap++)
        {
            heights[gap % heights.Length] = double.NaN;
        }

        var index = block.FirstIndex;
        foreach (ref readonly var sample in block.Samples.Span)
        {
            heights[index % heights.Length] = filter.Step(index, sample);
            index++;
        }

        nextIndex = index;
    }

    /// <summary>The window as rows of text, oldest on the left.</summary>
    /// <param name="columns">Characters in a row.</param>
    /// <param name="rows">How many rows.</param>
    /// <param name="hasDots">Whether the terminal shows Unicode; stars take their place where not.</param>
    public IReadOnlyList<string> Rows(int columns, int rows, bool hasDots)
    {
        var (wide, high) = hasDots ? (DotsWide, DotsHigh) : (1, 1);
        var (lowest, highest) = Range();
        var cells = new int[rows, columns];
        var before = -1;
        for (var x = 0; x < columns * wide; x++)
        {
            var at = DotAt(x, columns * wide, rows * high, lowest, highest);
            if (at >= 0)
            {
                // From the height before to this one, so that a steep front is a line and no scatter of dots.
                for (var y = Math.Min(at, before < 0 ? at : before); y <= Math.Max(at, before); y++)
                {
                    cells[y / high, x / wide] |= Dot(x % wide, y % high);
                }
            }

            before = at;
        }

        return [.. Enumerable.Range(0, rows).Select(row => RowOf(cells, row, columns, hasDots))];
    }

    private static string RowOf(int[,] cells, int row, int columns, bool hasDots)
    {
        var text = new StringBuilder(columns);
        for (var column = 0; column < columns; column++)
        {
            var dots = cells[row, column];
            text.Append(hasDots ? (char)(NoDots + dots) : dots == 0 ? ' ' : '*');
        }

        return text.ToString();
    }

    // Bits of the block in the order of the Unicode Standard, chapter 21.1: dots 1 to 3 and 7 on the left, 4 to 6 and 8 on the right.
    private static int Dot(int x, int y) => y < 3 ? 1 << (y + (3 * x)) : 1 << (6 + x);

    private (double Lowest, double Highest) Range()
    {
        var known = heights.Where(double.IsFinite).DefaultIfEmpty(0);
        var (lowest, highest) = (known.Min(), known.Max());
        var missing = Math.Max(0, LeastSwingPercent - (highest - lowest)) / 2;
        return (lowest - missing, highest + missing);
    }

    private int DotAt(int x, int width, int height, double lowest, double highest)
    {
        var index = nextIndex - heights.Length + ((long)x * heights.Length / width);
        var value = index < 0 ? double.NaN : heights[index % heights.Length];
        return double.IsFinite(value) ? (int)Math.Round((highest - value) / (highest - lowest) * (height - 1)) : -1;
    }
}
