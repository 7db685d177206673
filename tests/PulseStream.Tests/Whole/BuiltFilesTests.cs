using System.Reflection.PortableExecutable;
using Xunit;

namespace PulseStream.Tests.Whole;

public sealed class BuiltFilesTests
{
    // Where a build begins in a path of its own, two clones make two packages.
    private const string AnyMachine = "/_/";

    [Fact]
    public void TheyShowNoPathOfTheMachineThatBuiltThem()
    {
        var built = Directory.GetFiles(AppContext.BaseDirectory, "PulseStream.*.dll").Where(path => !Path.GetFileName(path).StartsWith("PulseStream.Tests", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(built);
        Assert.All(built, path => Assert.StartsWith(AnyMachine, SymbolsOf(path), StringComparison.Ordinal));
    }

    private static string SymbolsOf(string path)
    {
        using var file = new PEReader(File.OpenRead(path));
        var symbols = file.ReadDebugDirectory().First(entry => entry.Type == DebugDirectoryEntryType.CodeView);
        return file.ReadCodeViewDebugDirectoryData(symbols).Path;
    }
}
