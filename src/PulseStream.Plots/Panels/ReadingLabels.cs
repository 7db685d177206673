using PulseStream.Readings;

namespace PulseStream.Plots.Panels;

/// <summary>Chooses which readings get their number written so that no number covers another or another's dot; low readings come first.</summary>
/// <param name="area">The panel's place.</param>
/// <param name="low">Lower end of the values, percent.</param>
/// <param name="high">Upper end of the values, percent.</param>
internal sealed class ReadingLabels(PanelArea area, double low, double high)
{
    /// <summary>Diameter of a dot, pixels.</summary>
    public const float DotPixels = 8;

    /// <summary>The numbers to write.</summary>
    /// <param name="readings">All readings, in order.</param>
    public IReadOnlyList<ReadingLabel> Choose(IReadOnlyList<Reading> readings)
    {
        var chosen = new List<ReadingLabel>();
        foreach (var reading in readings.OrderBy(r => r.WholeSpo2Percent).ThenBy(r => r.SecondIndex))
        {
            var free = Candidates(reading).FirstOrDefault(label => Fits(label) && !chosen.Exists(other => Covers(label, other)) && !readings.Any(other => CoversDot(label, other)));
            if (free is not null)
            {
                chosen.Add(free);
            }
        }

        return chosen;
    }

    private IEnumerable<ReadingLabel> Candidates(Reading reading)
    {
        foreach (var isAbove in (bool[])[true, false])
        {
            var label = new ReadingLabel(reading, reading.SecondIndex + 0.5, isAbove);
            var margin = Math.Min(label.WidthPixels / 2, area.DataWidth / 2) / area.PixelsPerSecond;
            yield return label with { Time = Math.Clamp(label.Time, margin, area.EndSeconds - margin) };
        }
    }

    private bool Fits(ReadingLabel label) =>
        Math.Abs(MiddleOf(label) - (area.Height / 2)) <= (area.Height - ReadingLabel.HeightPixels) / 2;

    private bool Covers(ReadingLabel label, ReadingLabel other) =>
        Math.Abs(label.Time - other.Time) * area.PixelsPerSecond < (label.WidthPixels + other.WidthPixels) / 2
        && Math.Abs(MiddleOf(label) - MiddleOf(other)) < ReadingLabel.HeightPixels;

    private bool CoversDot(ReadingLabel label, Reading other) =>
        other != label.Reading
        && Math.Abs(label.Time - other.SecondIndex - 0.5) * area.PixelsPerSecond < (label.WidthPixels + DotPixels) / 2
        && Math.Abs(MiddleOf(label) - HeightOf(other)) < (ReadingLabel.HeightPixels + DotPixels) / 2;

    private double MiddleOf(ReadingLabel label) => HeightOf(label.Reading) + label.RisePixels;

    private double HeightOf(Reading reading) => (reading.WholeSpo2Percent - low) * area.Height / (high - low);
}
