using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>The sentences about recordings that cannot be used as a whole.</summary>
internal static class CsvFailures
{
    public static BadInputException Unreadable(string source, Exception problem) => problem switch
    {
        FileNotFoundException or DirectoryNotFoundException =>
            new(source, "there is no such file", "Check the path and run again", problem),
        _ when Directory.Exists(source) =>
            new(source, "expected a file and found a folder", "Name one recording in it and run again", problem),
        UnauthorizedAccessException =>
            new(source, "this user may not read it", "Allow reading it and run again", problem),
        _ => new(source, $"it could not be read ({problem.Message.TrimEnd('.')})", "Check the path and the medium and run again", problem),
    };

    public static BadInputException Empty(string source) =>
        new(source, "it is empty, expected a header line and rows", "Check that the recording was written and run again");

    public static BadInputException HeaderTooLong(string source) =>
        new($"{source}, line 1", $"no line end within {LineReader.LongestLine} bytes, expected a header line", "Give a recording as CSV text");

    public static BadInputException NoRows(string source) =>
        new(source, "it holds a header and no rows", "Check that the recording was written and run again");

    public static BadInputException NoGoodRow(string source, RowFaults faults) =>
        new(source, $"not one good row: {faults.Counts()}", "Correct the rows and run again");

    public static BadInputException TooManyBadRows(string source, long rows, RowFaults faults) =>
        new(source, $"{faults.Total} of {rows} rows are bad, expected at most 5 %: {faults.Counts()}", "Correct the rows and run again");

    public static BadInputException NoRate(string source, string reason) =>
        new(source, $"the sample rate is not known: {reason}", "Give it with --rate HZ and run again");

    public static BadInputException RateOutOfRange(string source, double hz) =>
        new(
            source,
            $"column 'time_s' tells {hz:0.###} samples a second, expected {SampleRate.MeasuredRange}",
            "Give the times in seconds and run again");

    public static BadInputException BadOption(string option, double found, string expected) =>
        new(option, $"expected {expected}, found {found}", "Correct the option and run again");
}
