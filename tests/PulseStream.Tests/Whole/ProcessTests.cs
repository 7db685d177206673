using System.Diagnostics;
using PulseStream.Archive;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Whole;

/// <summary>The built program as its own process: what a shell and a kernel do to it.</summary>
public sealed class ProcessTests
{
    // Written in README.md after the program's own name.
    private const string MainCommand = "-- replay ";

    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "pulsestream.dll");

    [Fact]
    public void TheMainCommandOfTheReadmeWorks()
    {
        var line = File.ReadLines(Path.Combine(Recordings.Root, "README.md")).First(text => text.Contains(MainCommand, StringComparison.Ordinal));
        var words = line[(line.IndexOf(MainCommand, StringComparison.Ordinal) + "-- ".Length)..].Split(' ');

        using var process = Start(string.Join(' ', words.Select(word => $"'{word}'")).Insert(0, $"dotnet '{Program}' "));
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();

        Assert.Equal(0, process.ExitCode);
        Assert.Contains("READING: ", output, StringComparison.Ordinal);
        Assert.Contains("ADVICE: ", output, StringComparison.Ordinal);
    }

    [Fact]
    public void AReaderThatGoesEndsTheProgramQuietly()
    {
        using var process = Start($"dotnet '{Program}' replay $(ls recordings/*.csv | grep -v -e truth -e beats) --format ndjson --quiet | head -n 3; echo ${{PIPESTATUS[0]}}");
        var output = process.StandardOutput.ReadToEnd();
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();

        Assert.EndsWith("\n0\n", output, StringComparison.Ordinal);
        Assert.Equal("", error);
    }

    [Theory]
    [InlineData("TERM")]
    [InlineData("INT")]
    public void AKilledSessionIsSealedAndSaysSo(string signal)
    {
        using var folder = new TemporaryFolder();
        var archive = folder["archive"];

        // The pipe stays open after the recording, as a live one does; the end line comes though nobody closes it.
        using var process = Start(
            $"mkfifo '{folder["pipe"]}'; dotnet '{Program}' replay - --format ndjson --archive '{archive}' < '{folder["pipe"]}' & program=$!; "
            + $"exec 3> '{folder["pipe"]}'; cat recordings/warm-finger.csv >&3; read; kill -{signal} $program; wait $program; echo $?");
        var lines = new List<string>();
        while (process.StandardOutput.ReadLine() is { } line)
        {
            lines.Add(line);
            if (line.Contains("\"second\":60,", StringComparison.Ordinal) && line.Contains("\"kind\":\"second\"", StringComparison.Ordinal))
            {
                process.StandardInput.WriteLine();
            }
        }

        process.WaitForExit();

        Assert.Equal("130", lines[^1]);
        Assert.Contains("\"kind\":\"end\"", lines[^2], StringComparison.Ordinal);
        ArchivedSession.Open(Assert.Single(SessionArchive.Sessions(archive))).Verify();
    }

    [Fact]
    public void ALiveSessionReadsOnWhereTheDiskIsFullAndKeepsWhatWasSecured()
    {
        using var folder = new TemporaryFolder();
        var archive = folder["archive"];

        // A limit on the size of files stands in for the full disk; writing past it fails instead of killing the program.
        // Without it the runtime maps its code through a file of its own that is larger.
        const int kilobytes = 240;
        using var process = Start(
            $"trap '' XFSZ; ulimit -f {kilobytes}; export DOTNET_EnableWriteXorExecute=0; "
            + $"cat recordings/slow-fall.csv | dotnet '{Program}' replay - --rate 50 --format ndjson --archive '{archive}'; echo ${{PIPESTATUS[1]}}");
        var output = process.StandardOutput.ReadToEnd();
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();

        Assert.Contains("The session goes on", error, StringComparison.Ordinal);
        Assert.Single(error.TrimEnd('\n').Split('\n'));
        Assert.Contains("\"level\":\"doctor-now\"", output, StringComparison.Ordinal);
        Assert.EndsWith("\n2\n", output, StringComparison.Ordinal);

        var said = new List<string>();
        ArchiveRecovery.RecoverAll(archive, said.Add);
        var kept = ArchivedSession.Open(Assert.Single(SessionArchive.Sessions(archive)));
        kept.Verify();
        Assert.Single(said);
        Assert.InRange(kept.Counts.Seconds, 10, 100);
    }

    // Job control gives the program in the background a default Ctrl-C, which a plain script would take from it.
    private static Process Start(string script) => Process.Start(new ProcessStartInfo("bash")
    {
        ArgumentList = { "-c", "set -m; " + script },
        UseShellExecute = false,
        WorkingDirectory = Recordings.Root,
        RedirectStandardInput = true,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    })!;
}
