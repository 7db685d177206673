using System.Globalization;
using System.Text.RegularExpressions;
using PulseStream.Samples;

namespace PulseStream.Sources.Wfdb;

/// <summary>Reads the text of a WFDB header.</summary>
internal sealed partial class WfdbHeaderText
{
    // header(5): what holds where a field is left out.
    private const double UsualRateHz = 250;
    private const double UsualGain = 200;
    private const string UsualUnit = "mV";

    private const int MostSignals = 1024;

    private readonly string _place;
    private readonly Queue<(int Number, string Text)> _lines;
    private int _line = 1;

    private WfdbHeaderText(string text, string place)
    {
        _place = place;
        _lines = new Queue<(int, string)>(text.Split('\n')
            .Select((line, i) => (i + 1, line.Trim()))
            .Where(line => line.Item2.Length > 0 && line.Item2[0] != '#'));
    }

    public static WfdbHeader Parse(string text, string place) => new WfdbHeaderText(text, place).Read();

    private WfdbHeader Read()
    {
        var match = RecordLine().Match(Next("a record line"));
        if (!match.Success)
        {
            throw Bad("expected a record line such as 'night 2 125 60000'");
        }

        var segments = match.Groups["nseg"].Success ? (int)Number(match.Groups["nseg"], 1, int.MaxValue) : 0;
        var signals = (int)Number(match.Groups["nsig"], 0, MostSignals);
        var rate = match.Groups["fs"].Success ? Number(match.Groups["fs"], double.Epsilon, double.MaxValue) : UsualRateHz;
        var frames = match.Groups["nsamp"].Success ? (long)Number(match.Groups["nsamp"], 0, long.MaxValue) : 0;
        return new WfdbHeader(
            rate,
            frames > 0 ? frames : null,
            StartOf(match),
            segments > 0 ? [] : [.. Enumerable.Range(0, signals).Select(_ => Signal())],
            [.. Enumerable.Range(0, segments).Select(_ => Segment())]);
    }

    private WfdbSignal Signal()
    {
        var match = SignalLine().Match(Next("a signal line"));
        if (!match.Success)
        {
            throw Bad("expected a signal line such as 'night.dat 16 1(0)/count 16 0 0 0 0 infrared'");
        }

        var zero = Whole(match.Groups["zero"]) ?? 0;
        var gain = match.Groups["gain"].Success ? Number(match.Groups["gain"], double.MinValue, double.MaxValue) : 0;
        return new WfdbSignal(
            match.Groups["file"].Value,
            Whole(match.Groups["fmt"]) ?? 0,
            Math.Max(1, Whole(match.Groups["spf"]) ?? 1),
            Whole(match.Groups["skew"]) ?? 0,
            Whole(match.Groups["offset"]) ?? 0,
            gain == 0 ? UsualGain : gain,
            Whole(match.Groups["baseline"]) ?? zero,
            match.Groups["unit"].Success ? match.Groups["unit"].Value : UsualUnit,
            Whole(match.Groups["init"]) ?? zero,
            Whole(match.Groups["sum"]),
            match.Groups["name"].Success ? match.Groups["name"].Value.Trim() : match.Groups["file"].Value);
    }

    private WfdbSegment Segment()
    {
        var match = SegmentLine().Match(Next("a segment line"));
        return match.Success
            ? new WfdbSegment(match.Groups["name"].Value, (long)Number(match.Groups["nsamp"], 0, long.MaxValue))
            : throw Bad("expected a segment line such as 'night_0001 5000'");
    }

    private string Next(string expected)
    {
        if (!_lines.TryDequeue(out var line))
        {
            throw new BadInputException(_place, $"expected {expected}, found the end of the header", "Check that the header is whole and run again");
        }

        _line = line.Number;
        return line.Text;
    }

    private static DateTime? StartOf(Match match) =>
        match.Groups["date"].Success
        && DateTime.TryParseExact(match.Groups["date"].Value, "d/M/yyyy", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
        && TimeSpan.TryParse(match.Groups["time"].Value, CultureInfo.InvariantCulture, out var time)
            ? date + time
            : null;

    private int? Whole(Group group) => group.Success ? (int)Number(group, int.MinValue, int.MaxValue) : null;

    private double Number(Group group, double from, double to) =>
        double.TryParse(group.ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number >= from && number <= to
            ? number
            : throw Bad($"expected a number in its limits, found '{Csv.PrintableText.Of(group.Value)}'");

    private BadInputException Bad(string problem) => new($"{_place}, line {_line}", problem, "Correct the header and run again");

    [GeneratedRegex(@"^(?<rec>[^\s/]+)(/(?<nseg>\d+))?\s+(?<nsig>\d+)(\s+(?<fs>[\d.eE+\-]+)(/[\d.eE+\-]+(\([^)]*\))?)?(\s+(?<nsamp>\d+)(\s+(?<time>[\d:.]+)(\s+(?<date>\d+/\d+/\d+))?)?)?)?(\s.*)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex RecordLine();

    [GeneratedRegex(@"^(?<file>\S+)\s+(?<fmt>\d+)(x(?<spf>\d+))?(:(?<skew>\d+))?(\+(?<offset>\d+))?(\s+(?<gain>-?[\d.]+([eE][+\-]?\d+)?)(\((?<baseline>-?\d+)\))?(/(?<unit>\S+))?(\s+(?<res>-?\d+)(\s+(?<zero>-?\d+)(\s+(?<init>-?\d+)(\s+(?<sum>-?\d+)(\s+(?<block>-?\d+)(\s+(?<name>.+))?)?)?)?)?)?)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SignalLine();

    [GeneratedRegex(@"^(?<name>\S+)\s+(?<nsamp>\d+)$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SegmentLine();
}
