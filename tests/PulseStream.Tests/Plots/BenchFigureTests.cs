using System.Text;
using PulseStream.Accuracy;
using PulseStream.Accuracy.Calibration;
using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Optics;
using PulseStream.Accuracy.Responses;
using PulseStream.Accuracy.Runs;
using PulseStream.Plots.Bench;
using PulseStream.Tests.Accuracy;
using PulseStream.Tests.Cli;
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
        Assert.Contains("sans-serif", svg, StringComparison.Ordinal);
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
    public void ThePageIsCompleteInItself()
    {
        using var folder = new TemporaryFolder();
        var pairs = folder.Write("pairs.csv", ValidateCommandTests.Csv(SimulatedStudies.Of(12, 20, 4)));

        var run = ProgramRun.Of("validate", pairs, "--page", folder["out/page.html"], "--figures", folder["out"], "--quiet");

        Assert.Equal((0, ""), (run.Status, run.Error));
        var page = File.ReadAllText(folder["out/page.html"]);
        Assert.Equal(4, page.Split("data:image/png;base64,").Length - 1);
        Assert.DoesNotContain("http", page, StringComparison.Ordinal);
        Assert.Equal(8, Directory.GetFiles(folder["out"]).Count(file => file.EndsWith(".png", StringComparison.Ordinal) || file.EndsWith(".svg", StringComparison.Ordinal)));
    }

    private static void IsDrawn(Figure figure)
    {
        var png = figure.ToPng();
        Assert.Equal(PngSignature, png[..4]);
        Assert.Equal(png, figure.ToPng());
        Assert.StartsWith("<", Encoding.UTF8.GetString(figure.ToSvg()), StringComparison.Ordinal);
        figure.Dispose();
    }
}
