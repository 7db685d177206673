using System.Text.RegularExpressions;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Whole;

/// <summary>What no source file says: machine paths, registry hosts, trackers, and type names that say nothing.</summary>
public sealed partial class SourceTextTests
{
    private static readonly string[] Kinds = [".cs", ".md", ".json", ".csproj", ".props", ".sh", ".txt", ".py"];

    [Fact]
    public void NoSourceFileSpeaksOfTheMachineItWasWrittenOn() => Assert.DoesNotContain(Lines(), line => MachineWords().IsMatch(line.Text));

    [Fact]
    public void NoTypeNameSaysNothing() =>
        Assert.DoesNotContain(Lines(), line => line.Path.EndsWith(".cs", StringComparison.Ordinal) && EmptyNames().IsMatch(line.Text));

    private static IEnumerable<(string Path, string Text)> Lines() => Files()
        .SelectMany(path => File.ReadLines(path).Select(text => (path, text)));

    private static IEnumerable<string> Files() =>
        new[] { "src", "tests", "notebooks", "recordings" }
            .Select(folder => Path.Combine(Recordings.Root, folder))
            .Where(Directory.Exists)
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
            .Concat(Directory.EnumerateFiles(Recordings.Root))
            .Where(path => Kinds.Contains(Path.GetExtension(path), StringComparer.Ordinal))
            .Where(path => !path.EndsWith($"{nameof(SourceTextTests)}.cs", StringComparison.Ordinal));

    [GeneratedRegex(@"(^|[\s""'(])/(work|home|root)/|contract section|\bissue #?\d|\bsub-?agents?\b|registry\.|nuget\.org/|TODO|FIXME", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex MachineWords();

    [GeneratedRegex(@"\b(class|struct|record|interface|enum) \w*(Manager|Helper|Utils?|Utilities)\b", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex EmptyNames();
}
