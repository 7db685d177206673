using CsCheck;
using PulseStream.Plots.Panels;
using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Plots;

public class ReadingLabelsTests
{
    private const double Low = 80;
    private const double High = 101;

    private static readonly PanelArea Area = new(0, 1200, 100, 250, 7200, HasTimes: false);

    [Fact]
    public void NoNumberCoversAnotherOneOrADot() =>
        Gen.Select(Gen.Int[0, 7199], Gen.Int[82, 100]).Array[0, 80].Sample(places =>
        {
            var readings = places.DistinctBy(place => place.Item1).Select(place => ReadingAt(place.Item1, place.Item2)).ToArray();
            var labels = new ReadingLabels(Area, Low, High).Choose(readings);

            for (var i = 0; i < labels.Count; i++)
            {
                var own = BoxOf(labels[i]);
                Assert.True(own.Left >= -0.001 && own.Right <= Area.DataWidth + 0.001 && own.Bottom >= 0 && own.Top <= Area.Height);
                Assert.All(labels.Skip(i + 1), other => Assert.False(Meet(own, BoxOf(other))));
                Assert.All(readings.Where(r => r != labels[i].Reading), other => Assert.False(Meet(own, DotOf(other))));
            }
        });

    [Fact]
    public void TheLowestReadingAlwaysHasItsNumberWhenItIsAlone()
    {
        Reading[] readings = [ReadingAt(100, 97), ReadingAt(110, 97), ReadingAt(3000, 85), ReadingAt(6000, 97)];

        Assert.Contains(new ReadingLabels(Area, Low, High).Choose(readings), label => label.Reading.WholeSpo2Percent == 85);
    }

    [Fact]
    public void AShortSessionKeepsItsNumberInside()
    {
        var label = Assert.Single(new ReadingLabels(Area with { EndSeconds = 5 }, Low, High).Choose([ReadingAt(4, 97)]));

        Assert.InRange(label.Time, 4, 5);
    }

    private static Reading ReadingAt(long second, int percent) => new(second, percent, new(percent, percent, percent), null, null, 5, Reasons.None);

    private static double HeightOf(int percent) => (percent - Low) * Area.Height / (High - Low);

    private static (double Left, double Right, double Bottom, double Top) BoxOf(ReadingLabel label)
    {
        var (x, y) = (label.Time * Area.PixelsPerSecond, HeightOf(label.Reading.WholeSpo2Percent) + label.RisePixels);
        return (x - (label.WidthPixels / 2), x + (label.WidthPixels / 2), y - (ReadingLabel.HeightPixels / 2), y + (ReadingLabel.HeightPixels / 2));
    }

    private static (double Left, double Right, double Bottom, double Top) DotOf(Reading reading)
    {
        var (x, y) = ((reading.SecondIndex + 0.5) * Area.PixelsPerSecond, HeightOf(reading.WholeSpo2Percent));
        const double half = ReadingLabels.DotPixels / 2;
        return (x - half, x + half, y - half, y + half);
    }

    // Rounding may let boxes touch.
    private static bool Meet((double Left, double Right, double Bottom, double Top) a, (double Left, double Right, double Bottom, double Top) b) =>
        a.Left < b.Right - 1e-6 && b.Left < a.Right - 1e-6 && a.Bottom < b.Top - 1e-6 && b.Bottom < a.Top - 1e-6;
}
