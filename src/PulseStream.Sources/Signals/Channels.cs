using PulseStream.Samples;

namespace PulseStream.Sources.Signals;

/// <summary>Names, units and columns of the channels, and how a sample holds them.</summary>
internal static class Channels
{
    /// <summary>Channels of a sample.</summary>
    public const int Count = 7;

    private static readonly (Channel Channel, SampleColumns Column, string Name, string Unit)[] All =
    [
        (Channel.Red, SampleColumns.Red, "red", "count"),
        (Channel.Infrared, SampleColumns.Infrared, "infrared", "count"),
        (Channel.Ambient, SampleColumns.Ambient, "ambient", "count"),
        (Channel.Pleth, SampleColumns.Pleth, "pleth", "NU"),
        (Channel.AccelerationX, SampleColumns.Acceleration, "accel_x", "m/s2"),
        (Channel.AccelerationY, SampleColumns.Acceleration, "accel_y", "m/s2"),
        (Channel.AccelerationZ, SampleColumns.Acceleration, "accel_z", "m/s2"),
    ];

    /// <summary>All names with commas.</summary>
    public static string Names { get; } = string.Join(", ", All.Select(one => one.Name));

    /// <summary>Channels that carry columns, in order.</summary>
    public static IReadOnlyList<Channel> Of(SampleColumns columns) =>
        [.. All.Where(one => columns.HasFlag(one.Column)).Select(one => one.Channel)];

    /// <summary>Columns that channels make up; acceleration only where all three axes are there.</summary>
    public static SampleColumns ColumnsOf(IReadOnlyCollection<Channel> channels) => All
        .Where(one => channels.Contains(one.Channel) && All.Where(other => other.Column == one.Column).All(other => channels.Contains(other.Channel)))
        .Aggregate(SampleColumns.None, (columns, one) => columns | one.Column);

    public static string NameOf(Channel channel) => All[(int)channel].Name;

    public static string UnitOf(Channel channel) => All[(int)channel].Unit;

    public static bool TryParse(string name, out Channel channel)
    {
        var at = Array.FindIndex(All, one => string.Equals(one.Name, name, StringComparison.OrdinalIgnoreCase));
        channel = (Channel)Math.Max(0, at);
        return at >= 0;
    }

    /// <summary>A sample of seven values in the order of the channels.</summary>
    public static Sample SampleOf(ReadOnlySpan<double> values) =>
        new(values[0], values[1], values[2], values[3], values[4], values[5], values[6]);

    public static double ValueOf(in Sample sample, Channel channel) => channel switch
    {
        Channel.Red => sample.Red,
        Channel.Infrared => sample.Infrared,
        Channel.Ambient => sample.Ambient,
        Channel.Pleth => sample.Pleth,
        Channel.AccelerationX => sample.AccelerationX,
        Channel.AccelerationY => sample.AccelerationY,
        Channel.AccelerationZ => sample.AccelerationZ,
        _ => throw new ArgumentOutOfRangeException(nameof(channel), channel, "Not a value of a sample."),
    };
}
