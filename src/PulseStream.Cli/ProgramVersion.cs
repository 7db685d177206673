namespace PulseStream.Cli;

/// <summary>Version of the program.</summary>
internal static class ProgramVersion
{
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetName().Version?.ToString(3) ?? "unknown";
}
