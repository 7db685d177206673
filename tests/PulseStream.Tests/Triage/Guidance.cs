using PulseStream.Triage.Policies;

namespace PulseStream.Tests.Triage;

/// <summary>The published guidance in tests/vectors/guidance.</summary>
internal static class Guidance
{
    private static readonly string Folder = FindFolder(AppContext.BaseDirectory);

    public static TriagePolicy[] Policies { get; } = [Read("who-home-care-bundle"), Read("nhs-england-c0445")];

    public static IEnumerable<string[]> Bands => File.ReadLines(Path.Combine(Folder, "bands.csv")).Skip(1).Select(line => line.Split(','));

    public static TriagePolicy Read(string name) => TriagePolicy.Parse(File.ReadAllBytes(Path.Combine(Folder, $"{name}.json")), $"{name}.json");

    private static string FindFolder(string from)
    {
        var folder = Path.Combine(from, "tests", "vectors", "guidance");
        return Directory.Exists(folder) ? folder : FindFolder(Directory.GetParent(from)?.FullName ?? throw new DirectoryNotFoundException("tests/vectors/guidance"));
    }
}
