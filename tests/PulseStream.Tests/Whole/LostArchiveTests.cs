using PulseStream.Tests.Cli;
using PulseStream.Tests.Whole.Cable;
using Xunit;

namespace PulseStream.Tests.Whole;

/// <summary>An archive that cannot be written, from the start or from some moment on.</summary>
public sealed class LostArchiveTests
{
    // The system's own files: not even its administrator makes a folder there.
    private const string ReadOnly = "/sys/hut-archive";

    [Theory]
    [InlineData("replay", "recordings/warm-finger.csv")]
    [InlineData("serve", "recordings/warm-finger.csv")]
    [InlineData("read", "/dev/null", "--layout", "recordings/instruments/hut-text.json")]
    public void AReadOnlyArchiveIsOneSentence(params string[] words)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only Linux has a place that nobody can write.");
        using var program = new LiveProgram([.. words, "--archive", ReadOnly]);

        Assert.Equal(2, program.ExitStatus());

        var sentence = Assert.Single(program.Error);
        Assert.StartsWith(ReadOnly + ": expected an archive that can be written", sentence, StringComparison.Ordinal);
        Assert.EndsWith("Give another folder, or free space and rights.", sentence, StringComparison.Ordinal);
        Assert.Empty(program.Output);
    }

    [Fact]
    public void ServeGoesOnWithoutItsArchiveAndEndsWithTheStatusOfRead()
    {
        using var folder = new TemporaryFolder();
        using var server = new LiveProgram("serve", Recordings.WarmFinger, "--speed", "5", "--archive", folder["archive"], "--port", "0");
        server.WaitUntil(program => program.Output.Length > 0 && HasBegun(folder));
        Directory.Delete(folder["archive"], recursive: true);
        server.WaitUntilSaid("The page went on");

        Assert.Equal(2, server.Interrupt());
    }

    private static bool HasBegun(TemporaryFolder folder) => Directory.EnumerateFiles(folder.Path, "journal.db", SearchOption.AllDirectories).Any();
}
