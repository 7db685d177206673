using System.Text;
using System.Xml.Linq;
using PulseStream.Accuracy;
using PulseStream.Accuracy.Calibration;
using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Optics;
using PulseStream.Accuracy.Responses;
using PulseStream.Accuracy.Runs;
using PulseStream.Plots.Bench;
using PulseStream.Tests.Accuracy;
using PulseStream.Tests.Cli;
using SkiaSharp;
using Xunit;

namespace PulseStream.Tests.Plots;

public sealed class BenchFigureTests
{
    private static readonly byte[] PngSignature = [0x89, 0x50, 0x4E, 0x47];

    [Theory]
    [InlineData(12, 20)]
    [InlineData(2, 1)]
    [InlineData(1, 3)]
    public void AStatementHasFourFiguresInTwoForms(int subjects, int pairs)
    {
        var statement = AccuracyStatement.Of(SimulatedStudies.Of(subjects, pairs, 1), Quantity.Saturation, CriteriaFile.Default);

        var figures = AccuracyFigures.Of(statement);

        Assert.Equal(["bland-altman", "error-over-reference", "arms-by-band", "cumulative-error"], figures.Select(figure => figure.Name), StringComparer.Ordinal);
        Assert.All(figures, IsDrawn);
        var svg = Encoding.UTF8.GetString(figures[0].ToSvg());
        Assert.Contains("percentage points", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void ACurveHasItsPairsAndWhatIsLeft()
    {
        var pairs = SimulatedStudies.Of(8, 20, 1).Select(pair => new RatioPair(pair.Subject, pair.Reference, (110 - pair.Reading) / 25)).ToArray();

        Assert.All(CalibrationFigures.Of(CurveFit.Of(pairs, "hut.csv"), TheoreticalCurve.Of(660, 940)), IsDrawn);
    }

    [Fact]
    public void AStepIsDrawn()
    {
        double[] times = [.. Enumerable.Range(0, 120).Select(i => (double)i)];
        var course = new TimedValues(times, [.. times.Select(t => t < 60 ? 97.0 : 88)]);
        using var figure = ResponseFigure.Of(StepResponses.Of(course, Quantity.Saturation, null, [])[0], course, null, 1);

        IsDrawn(figure);
    }

    [Fact]
    public void AnSvgNeedsNoFont()
    {
        using var figure = CalibrationFigures.Of(CurveFit.Of([.. SimulatedStudies.Of(8, 20, 1).Select(pair => new RatioPair(pair.Subject, pair.Reference, (110 - pair.Reading) / 25))], "hut.csv"), null)[0];

        var svg = XDocument.Parse(Encoding.UTF8.GetString(figure.ToSvg()));

        Assert.DoesNotContain(svg.Descendants(), element => element.Name.LocalName == "text");
        var label = svg.Descendants().First(element => element.Attribute("aria-label")?.Value == "Ratio of ratios R");
        Assert.StartsWith("M", label.Attribute("d")!.Value, StringComparison.Ordinal);
        Assert.Equal(figure.Title, svg.Root!.Elements().First().Value);
    }

    [Fact]
    public void HeatMapsStandBesideEachOther()
    {
        HeatMap map = new("pulse 75 /min", ["0.1", "2"], ["75", "97"], [new(0, 0, "–", "0 %", null, false), new(1, 1, "4.1", "90 %", 1.4, true)]);
        using var one = HeatFigure.Of("one", "A_rms (points)", "Perfusion (%)", "SpO₂ (%)", [map]);
        using var four = HeatFigure.Of("four", "A_rms (points)", "Perfusion (%)", "SpO₂ (%)", [map, map, map, map]);

        var (small, large) = (SKBitmap.Decode(one.ToPng()), SKBitmap.Decode(four.ToPng()));

        Assert.Equal((3 * small.Width, 2 * small.Height), (large.Width, large.Height));
        foreach (var (left, top) in ((int, int)[])[(0, 0), (1, 0), (2, 0), (0, 1)])
        {
            Assert.Equal(small.Pixels, Part(large, left * small.Width, top * small.Height, small));
        }

        Assert.Contains("4.1", Encoding.UTF8.GetString(four.ToSvg()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.49)]
    [InlineData(1.0)]
    [InlineData(2.0)]
    [InlineData(9.0)]
    public void InkIsReadableOnEveryColour(double share)
    {
        var (red, green, blue) = HeatColour.At(share);

        // WCAG 2.2: relative luminance; ink has 0.0103.
        static double Linear(byte value) => value <= 10 ? value / 255.0 / 12.92 : Math.Pow(((value / 255.0) + 0.055) / 1.055, 2.4);
        Assert.True(((0.2126 * Linear(red)) + (0.7152 * Linear(green)) + (0.0722 * Linear(blue)) + 0.05) / 0.0603 >= 7);
    }

    [Fact]
    public void ThePageIsCompleteInItself()
    {
        using var folder = new TemporaryFolder();
        var pairs = folder.Write("pairs.csv", ValidateCommandTests.Csv(SimulatedStudies.Of(12, 20, 4)));

        var run = ProgramRun.Of("validate", pairs, "--page", folder["out/page.html"], "--figures", folder["out"], "--quiet");

        Assert.Equal((0, ""), (run.Status, run.Error));
        var page = File.ReadAllText(folder["out/page.html"]);
        Assert.Equal(4, page.Split("data:image/png;base64,").Length - 1);
        Assert.DoesNotContain("http", page, StringComparison.Ordinal);
        Assert.Contains("error gained for one more of the reference", page, StringComparison.Ordinal);
        Assert.Contains("not met, not in force", page, StringComparison.Ordinal);
        Assert.Equal(8, Directory.GetFiles(folder["out"]).Count(file => file.EndsWith(".png", StringComparison.Ordinal) || file.EndsWith(".svg", StringComparison.Ordinal)));
    }

    private static SKColor[] Part(SKBitmap whole, int left, int top, SKBitmap size) =>
        [.. Enumerable.Range(0, size.Height).SelectMany(y => Enumerable.Range(0, size.Width).Select(x => whole.GetPixel(left + x, top + y)))];

    private static void IsDrawn(Figure figure)
    {
        var png = figure.ToPng();
        Assert.Equal(PngSignature, png[..4]);
        Assert.Equal(png, figure.ToPng());
        Assert.StartsWith("<", Encoding.UTF8.GetString(figure.ToSvg()), StringComparison.Ordinal);
        figure.Dispose();
    }
}
