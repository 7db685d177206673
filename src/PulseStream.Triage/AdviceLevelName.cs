namespace PulseStream.Triage;

/// <summary>The names of the levels in policy files and in the rules that an advice lists.</summary>
public static class AdviceLevelName
{
    private static readonly string[] Names = ["usual", "recheck", "call", "doctor-now", "emergency"];

    /// <summary>All names, least urgent first, with commas.</summary>
    public static string All { get; } = string.Join(", ", Names);

    /// <summary>The name of a level.</summary>
    /// <param name="level">The level.</param>
    public static string Of(AdviceLevel level) => Names[(int)level];

    /// <summary>Finds the level with a name.</summary>
    /// <param name="name">The name, letter by letter.</param>
    /// <param name="level">The level, where there is one.</param>
    public static bool TryParse(string name, out AdviceLevel level)
    {
        level = (AdviceLevel)Math.Max(0, Array.IndexOf(Names, name));
        return Array.IndexOf(Names, name) >= 0;
    }
}
