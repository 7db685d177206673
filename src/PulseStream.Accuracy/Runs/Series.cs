using PulseStream.Accuracy.Tables;
using PulseStream.Samples;

namespace PulseStream.Accuracy.Runs;

/// <summary>What an instrument showed over time: saturation, pulse rate or both.</summary>
/// <param name="Saturation">Percent; null where the series has no such column.</param>
/// <param name="PulseRate">Beats a minute; null likewise.</param>
public sealed record Series(TimedValues? Saturation, TimedValues? PulseRate)
{
    private const double LongestSeconds = 1e9;
    private const string TimeName = "time_s";
    private const string SecondName = "second";

    // A second's truth is its mean, which is had in its middle.
    private const double MiddleOfSecond = 0.5;

    /// <summary>Reads a series: columns `time_s`, `spo2` and/or `pulse`; a field may be empty where nothing was shown.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <param name="say">Hears of columns that are ignored.</param>
    /// <exception cref="BadInputException">It is no such table, a time does not rise, or nothing was shown.</exception>
    public static Series Read(ReadOnlyMemory<byte> utf8, string place, Action<string> say)
    {
        ArgumentNullException.ThrowIfNull(say);
        var table = TextTable.Parse(utf8, place, [TimeColumn(utf8)], ["spo2", "pulse", "perfusion", "finger", "disturbances"]);
        if (table.Unknown.Length > 0)
        {
            say($"{place}: columns not known here are ignored: {table.Unknown}.");
        }

        var series = new Series(CourseOf(table, TimeColumn(utf8), Quantity.Saturation), CourseOf(table, TimeColumn(utf8), Quantity.PulseRate));
        return series is { Saturation: null, PulseRate: null }
            ? throw new BadInputException($"{place}, line 1", "no column 'spo2' or 'pulse' with a value in it", "Name what the instrument showed 'spo2' or 'pulse' and run again")
            : series;
    }

    /// <summary>The course of a quantity; null where the series has none.</summary>
    /// <param name="quantity">Which.</param>
    public TimedValues? Of(Quantity quantity) => quantity == Quantity.Saturation ? Saturation : PulseRate;

    // The truth beside a simulated recording counts its seconds: `second` instead of `time_s`.
    private static string TimeColumn(ReadOnlyMemory<byte> utf8)
    {
        var end = utf8.Span.IndexOf((byte)'\n');
        var header = System.Text.Encoding.UTF8.GetString(utf8.Span[..(end < 0 ? utf8.Length : end)]).TrimStart('\uFEFF');
        var names = header.Split(',').Select(name => name.Trim().Trim('"')).ToArray();
        return !names.Contains(TimeName, StringComparer.OrdinalIgnoreCase) && names.Contains(SecondName, StringComparer.OrdinalIgnoreCase) ? SecondName : TimeName;
    }

    private static TimedValues? CourseOf(TextTable table, string timeColumn, Quantity quantity)
    {
        var scale = QuantityScale.Of(quantity);
        var (times, values) = (new List<double>(), new List<double>());
        var last = double.NegativeInfinity;
        foreach (var row in table.Rows)
        {
            var time = row.Number(timeColumn, -LongestSeconds, LongestSeconds);
            if (!(time > last))
            {
                throw row.Wrong($"expected a time after {last:0.###} s in column '{timeColumn}', found {time:0.###}");
            }

            last = time;
            if (row.NumberOrNull(scale.Name, scale.Lowest, scale.Highest) is { } value)
            {
                times.Add(timeColumn == SecondName ? time + MiddleOfSecond : time);
                values.Add(value);
            }
        }

        return times.Count > 0 ? new TimedValues(times, values) : null;
    }
}
