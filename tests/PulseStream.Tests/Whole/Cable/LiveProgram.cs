using System.Diagnostics;
using System.Text.Json;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Whole.Cable;

/// <summary>The built program as a process that runs until it is told to stop.</summary>
internal sealed class LiveProgram : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "pulsestream.dll");

    private readonly Process _process;
    private readonly List<string> _output = [];
    private readonly List<string> _error = [];

    public LiveProgram(params string[] args)
    {
        _process = Process.Start(new ProcessStartInfo("dotnet", [Program, .. args]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false, WorkingDirectory = Recordings.Root })!;
        Listen(_output, read => _process.OutputDataReceived += read);
        Listen(_error, read => _process.ErrorDataReceived += read);
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    public string[] Output => Copy(_output);

    public string[] Error => Copy(_error);

    public bool HasExited => _process.HasExited;

    public static string Layout(string name) => Recordings.PathOf($"instruments/{name}.json");

    /// <summary>Seconds told so far.</summary>
    public int Seconds => Output.Count(line => line.Contains("\"kind\":\"second\"", StringComparison.Ordinal));

    public JsonElement End => JsonDocument.Parse(Output[^1]).RootElement;

    public void WaitUntil(Func<LiveProgram, bool> holds)
    {
        var clock = Stopwatch.StartNew();
        while (!holds(this))
        {
            Assert.False(clock.Elapsed > Patience || _process.HasExited, $"It never came. Said: {string.Join('\n', Error.TakeLast(5))}");
            Thread.Sleep(20);
        }
    }

    public void WaitUntilSaid(string words) => WaitUntil(program => program.Error.Any(line => line.Contains(words, StringComparison.Ordinal)));

    /// <summary>Ctrl-C.</summary>
    public int Interrupt()
    {
        using var kill = Process.Start("kill", ["-INT", $"{_process.Id}"]);
        return ExitStatus();
    }

    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public int ExitStatus()
    {
        Assert.True(_process.WaitForExit(Patience), "It does not end.");
        _process.WaitForExit();
        return _process.ExitCode;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            Kill();
        }

        _process.Dispose();
    }

    private static void Listen(List<string> to, Action<DataReceivedEventHandler> subscribe) => subscribe((_, read) =>
    {
        if (read.Data is { } line)
        {
            lock (to)
            {
                to.Add(line);
            }
        }
    });

    private static string[] Copy(List<string> from)
    {
        lock (from)
        {
            return [.. from];
        }
    }
}
