namespace PulseStream.Tests.Signal;

/// <summary>Values from outside in tests/vectors, each folder with its SOURCE.md.</summary>
internal static class Vectors
{
    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public static string[][] Rows(string topic, string file) =>
        [.. File.ReadLines(Path.Combine(Root, "tests", "vectors", topic, file)).Skip(1).Select(line => line.Split(','))];

    private static string FindRoot(string from) =>
        Directory.Exists(Path.Combine(from, "tests", "vectors"))
            ? from
            : FindRoot(Directory.GetParent(from)?.FullName ?? throw new DirectoryNotFoundException("tests/vectors"));
}
