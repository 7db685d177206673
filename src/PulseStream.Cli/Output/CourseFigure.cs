using System.Globalization;
using System.Text;

namespace PulseStream.Cli.Output;

/// <summary>The readings of a person over days as a drawing within a page: SVG, no script, nothing fetched.</summary>
internal static class CourseFigure
{
    private const double Width = 700;
    private const double Height = 230;
    private const double Left = 40;
    private const double Right = 690;
    private const double Top = 10;
    private const double Bottom = 200;
    private const double HighestPercent = 100;

    // At least ten points are shown, so that a steady person's course does not look like a storm.
    private const double LeastRange = 10;
    private const int MostDateLabels = 8;

    public static string Of(PersonTrend trend)
    {
        var readings = trend.Days.Records.Count > 0 ? trend.Days.Records : trend.Days.Readings;
        var (from, to) = (readings[0].Time, readings[^1].Time);
        var lowest = Math.Floor(Math.Min(HighestPercent - LeastRange, readings.Min(reading => reading.Reading.Spo2.Percent) - 1));
        var svg = new StringBuilder();
        Add(svg, $"<svg viewBox=\"0 0 {Width} {Height}\" role=\"img\" aria-label=\"SpO2 of each sitting over days, with the usual value\">");
        for (var percent = lowest; percent <= HighestPercent; percent += HighestPercent - lowest > 2 * LeastRange ? 5 : 2)
        {
            Add(svg, $"<line x1=\"{Left}\" x2=\"{Right}\" y1=\"{Y(percent):0.0}\" y2=\"{Y(percent):0.0}\" class=\"grid\"/><text x=\"{Left - 6}\" y=\"{Y(percent) + 4:0.0}\" text-anchor=\"end\">{percent:0}</text>");
        }

        foreach (var change in trend.Course.Changes)
        {
            Add(svg, $"<rect x=\"{X(change.From):0.0}\" width=\"{Math.Max(2, X(change.To) - X(change.From)):0.0}\" y=\"{Top}\" height=\"{Bottom - Top}\" class=\"change\"/>");
        }

        Add(svg, $"<line x1=\"{Left}\" x2=\"{Right}\" y1=\"{Y(trend.Course.Baseline.Percent):0.0}\" y2=\"{Y(trend.Course.Baseline.Percent):0.0}\" class=\"usual\"/>");
        foreach (var reading in readings)
        {
            Add(svg, $"<circle cx=\"{X(reading.Time):0.0}\" cy=\"{Y(reading.Reading.Spo2.Percent):0.0}\" r=\"3\"/>");
        }

        Dates(svg);
        return svg.Append("</svg>").ToString();

        double X(DateTimeOffset time) => Left + 6 + ((Right - Left - 12) * (to > from ? (time - from) / (to - from) : 0.5));
        double Y(double percent) => Bottom - ((Bottom - Top) * (percent - lowest) / (HighestPercent - lowest));

        void Dates(StringBuilder text)
        {
            var days = Math.Max(1, (int)Math.Ceiling((to - from).TotalDays / MostDateLabels));
            var midnight = new DateTimeOffset(from.Date, from.Offset);
            for (var day = midnight < from ? midnight.AddDays(1) : midnight; day <= to; day = day.AddDays(days))
            {
                Add(text, $"<text x=\"{X(day):0.0}\" y=\"{Bottom + 16}\" text-anchor=\"middle\">{day:MM-dd}</text>");
            }
        }
    }

    private static void Add(StringBuilder text, FormattableString part) => text.Append(part.ToString(CultureInfo.InvariantCulture));
}
