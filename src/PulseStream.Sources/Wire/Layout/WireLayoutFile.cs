using PulseStream.Samples;

namespace PulseStream.Sources.Wire.Layout;

/// <summary>Reads the description of an instrument's output: JSON, comments and trailing commas allowed, unknown members refused by name.</summary>
public static class WireLayoutFile
{
    private const int FewestBaud = 50;
    private const int MostBaud = 4_000_000;
    private const int FewestDataBits = 7;
    private const int MostDataBits = 8;

    // Above any converter's largest count, so that only slips are refused.
    private const double LargestFullScale = 1e12;

    /// <summary>Reads a layout.</summary>
    /// <param name="utf8Json">The file's bytes.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <exception cref="BadInputException">No JSON, or a member that is unknown, missing or wrong; the message has its path.</exception>
    public static WireLayout Parse(ReadOnlyMemory<byte> utf8Json, string place) =>
        StrictJson.Read(utf8Json, place, root => Read(new LayoutMembers(place, "", root)));

    private static WireLayout Read(LayoutMembers members)
    {
        members.AllowOnly("name", "sampleRateHz", "line", "fullScale", "text", "binary");
        var name = members.Text("name");
        var rate = new SampleRate(members.Number("sampleRateHz", SampleRate.LowestHz, SampleRate.HighestHz));
        var line = ReadLine(members.Object("line"));
        var fullScale = members.Has("fullScale") ? members.Number("fullScale", 1, LargestFullScale) : (double?)null;
        if (members.Has("text") == members.Has("binary"))
        {
            throw members.Wrong(members.Has("text") ? "binary" : "text", members.Has("text") ? "expected either 'text' or 'binary', found both" : "expected either 'text' or 'binary', found neither");
        }

        if (members.Has("text"))
        {
            var text = TextMembers.Read(members.Object("text"));
            return new(name, rate, line, fullScale, FieldColumns.Check(members.Object("text"), text.Fields.Select(field => field.Column)), text, null);
        }

        var binary = BinaryMembers.Read(members.Object("binary"));
        return new(name, rate, line, fullScale, FieldColumns.Check(members.Object("binary"), binary.Fields.Select(field => field.Column)), null, binary);
    }

    private static LineSettings ReadLine(LayoutMembers members)
    {
        members.AllowOnly("baud", "dataBits", "parity", "stopBits");
        var parity = members.OneOf("parity", isNeeded: false, "none", "even", "odd") switch
        {
            "even" => LineParity.Even,
            "odd" => LineParity.Odd,
            _ => LineParity.None,
        };
        return new(
            members.Whole("baud", FewestBaud, MostBaud), members.Whole("dataBits", FewestDataBits, MostDataBits, MostDataBits), parity, members.Whole("stopBits", 1, 2, 1));
    }
}
