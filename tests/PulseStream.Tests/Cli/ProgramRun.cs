using System.Text;
using System.Text.Json;
using PulseStream.Cli;
using Xunit;

namespace PulseStream.Tests.Cli;

/// <summary>What one command of the program did, run in this process.</summary>
internal sealed record ProgramRun(int Status, string Output, string Error)
{
    public static ProgramRun Of(params string[] args) => Fed(Stream.Null, args);

    public static ProgramRun Fed(Stream input, params string[] args) => Cancelled(input, CancellationToken.None, args);

    public static ProgramRun Cancelled(Stream input, CancellationToken cancel, params string[] args)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter();
        var surroundings = new Surroundings(input, output, error, new FixedClock());
        var status = PulseStreamProgram.RunAsync(args, surroundings, cancel).GetAwaiter().GetResult();
        return new ProgramRun(status, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }

    public string[] Lines => Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    public IEnumerable<JsonElement> Objects(string kind) => Lines
        .Select(line => JsonDocument.Parse(line).RootElement)
        .Where(line => line.GetProperty("kind").GetString() == kind);

    /// <summary>One sentence on standard error and nothing a machine would say.</summary>
    public void IsRefused()
    {
        Assert.Equal(2, Status);
        Assert.Single(Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.EndsWith(".", Error.TrimEnd(), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", Error, StringComparison.Ordinal);
        Assert.DoesNotContain("fault of the program", Error, StringComparison.Ordinal);
    }

    private sealed class FixedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 1, 8, 0, 0, TimeSpan.Zero);
    }
}
