using PulseStream.Accuracy.Tables;
using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Shown;

namespace PulseStream.Cli.Inputs;

/// <summary>
/// Finished readings of an instrument as CSV: `time_s`, and `spo2`, `pulse`, `perfusion` as it showed them, or `frame` and
/// `spot_check`, the bytes of its PLX Continuous and its PLX Spot-Check Measurements in hexadecimal.
/// </summary>
internal static class ShownFile
{
    private const string Time = "time_s";
    private const string Spo2 = "spo2";
    private const string Pulse = "pulse";
    private const string Perfusion = "perfusion";
    private const string Frame = "frame";
    private const string SpotCheck = "spot_check";

    // A session longer than a week is none.
    private const double LongestSeconds = 7 * 24 * 60 * 60;
    private const double HighestPulse = 500;
    private const double MostRefused = 0.05;

    /// <summary>Opens a file.</summary>
    /// <exception cref="BadInputException">It is no such table, more than one row in twenty cannot be read, or nothing was shown.</exception>
    public static ShownRecording Open(string path, Stream input, CsvOptions options)
    {
        var table = TextTable.Parse(TableFile.Read(path, input), path, [Time], [Spo2, Pulse, Perfusion, Frame, SpotCheck]);
        var hasSpo2 = table.Has(Spo2) || table.Has(Frame) || table.Has(SpotCheck);
        if (!hasSpo2 && !table.Has(Pulse))
        {
            throw new BadInputException($"{path}, line 1", $"no column '{Spo2}', '{Pulse}', '{Frame}' or '{SpotCheck}'", "Name what the instrument showed so and run again");
        }

        if (table.Unknown.Length > 0)
        {
            options.Say?.Invoke($"{path}: columns not known here are ignored: {table.Unknown}.");
        }

        var (shown, refused) = Read(table, options.Say);
        return refused > MostRefused * table.Rows.Count ? throw new BadInputException(path, $"expected rows that can be read, found {refused} of {table.Rows.Count} that cannot", "Check how the file was written")
            : shown.Count == 0 ? throw new BadInputException(path, "the instrument showed nothing in it", "Check the columns and run again")
            : new ShownRecording(path == RecordingPaths.StandardInput ? path : Path.GetFileName(path), options.Start, ShownSeconds.Of(shown, hasSpo2), refused);
    }

    private static (IReadOnlyList<ShownValue> Shown, long Refused) Read(TextTable table, Action<string>? say)
    {
        var shown = new List<ShownValue>();
        long refused = 0;
        var last = 0.0;
        foreach (var row in table.Rows)
        {
            try
            {
                var time = row.Number(Time, last, LongestSeconds);
                shown.Add(ValueOf(row, time));
                last = time;
            }
            catch (BadInputException problem)
            {
                if (refused++ == 0)
                {
                    say?.Invoke($"{problem.Message} Rows like it count as nothing shown.");
                }
            }
        }

        return (shown, refused);
    }

    private static ShownValue ValueOf(TextRow row, double time)
    {
        if (row.TextOrNull(SpotCheck) is { } spotCheck)
        {
            return ToldMeasurement.TryReadSpotCheck(BytesOf(row, SpotCheck, spotCheck), out var found)
                ? ValueOf(time, found) with { IsSpotCheck = true }
                : throw row.Wrong($"expected the bytes of a whole spot-check measurement in column '{SpotCheck}', found '{spotCheck}'");
        }

        if (row.TextOrNull(Frame) is not { } hex)
        {
            return new ShownValue(time, row.NumberOrNull(Spo2, 0, 100) ?? double.NaN, row.NumberOrNull(Pulse, 0, HighestPulse) ?? double.NaN, row.NumberOrNull(Perfusion, 0, 100) ?? double.NaN, Reasons.None);
        }

        return ToldMeasurement.TryReadContinuous(BytesOf(row, Frame, hex), out var told)
            ? ValueOf(time, told)
            : throw row.Wrong($"expected the bytes of a whole continuous measurement in column '{Frame}', found '{hex}'");
    }

    private static ShownValue ValueOf(double time, in ToldMeasurement told) =>
        new(time, told.Spo2Percent, told.PulsePerMinute, told.PerfusionPercent, ShownReasons.Of(told));

    private static byte[] BytesOf(TextRow row, string column, string hex)
    {
        try
        {
            return Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));
        }
        catch (FormatException)
        {
            throw row.Wrong($"expected pairs of hexadecimal digits in column '{column}', found '{hex}'");
        }
    }
}
