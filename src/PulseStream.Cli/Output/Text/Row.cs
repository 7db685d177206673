namespace PulseStream.Cli.Output.Text;

/// <summary>A line about a time.</summary>
internal static class Row
{
    private const int TimeWidth = 10;

    public static string Of(string time, string what) => $"  {time.PadLeft(TimeWidth)}  {what}";
}
