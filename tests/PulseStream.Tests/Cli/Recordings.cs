namespace PulseStream.Tests.Cli;

/// <summary>The invented recordings of the project.</summary>
internal static class Recordings
{
    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public static string WarmFinger => PathOf("warm-finger.csv");

    public static string SlowFall => PathOf("slow-fall.csv");

    public static string PathOf(string name) => Path.Combine(Root, "recordings", name);

    private static string FindRoot(string folder) => File.Exists(Path.Combine(folder, "PulseStream.sln"))
        ? folder
        : FindRoot(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The project's folder is not above the tests."));
}
