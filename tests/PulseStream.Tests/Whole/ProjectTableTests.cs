using System.Text.RegularExpressions;
using System.Xml.Linq;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Whole;

/// <summary>The table of projects in DEVELOPERS.md says what the project files say.</summary>
public sealed partial class ProjectTableTests
{
    private const string Prefix = "PulseStream.";

    [Fact]
    public void TheTableOfProjectsEqualsTheProjectFiles() => Assert.Equal(FromFiles(), FromTable());

    private static string[] FromFiles() => [.. Directory.GetFiles(Path.Combine(Recordings.Root, "src"), "*.csproj", SearchOption.AllDirectories)
        .Select(path => (Name: Path.GetFileNameWithoutExtension(path), File: XDocument.Load(path)))
        .Select(project => Row(
            project.Name[Prefix.Length..],
            Includes(project.File, "ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path)[Prefix.Length..]),
            Includes(project.File, "PackageReference")))
        .Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Includes(XDocument file, string element) =>
        file.Descendants(element).Select(found => found.Attribute("Include")!.Value.Replace('\\', '/'));

    private static string[] FromTable()
    {
        var lines = File.ReadAllLines(Path.Combine(Recordings.Root, "DEVELOPERS.md"));
        var header = Array.FindIndex(lines, line => HeaderLine().IsMatch(line));
        Assert.True(header >= 0, "DEVELOPERS.md has no table of projects.");
        return [.. lines.Skip(header + 2).TakeWhile(line => line.StartsWith('|'))
            .Select(line => line.Trim('|').Split('|', StringSplitOptions.TrimEntries))
            .Select(cells => Row(cells[0], Words(cells[3]), Words(cells[4])))
            .Order(StringComparer.Ordinal)];
    }

    private static IEnumerable<string> Words(string cell) =>
        cell.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Where(word => word is not ("–" or "none" or "nothing"));

    private static string Row(string name, IEnumerable<string> references, IEnumerable<string> packages) =>
        $"{name}: {string.Join(", ", references.Order(StringComparer.Ordinal))}; {string.Join(", ", packages.Order(StringComparer.Ordinal))}";

    [GeneratedRegex(@"^\|\s*project\s*\|\s*turns\s*\|\s*into\s*\|\s*refers to\s*\|\s*packages\s*\|", RegexOptions.CultureInvariant)]
    private static partial Regex HeaderLine();
}
