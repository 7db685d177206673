using System.Diagnostics;
using System.Text.Json;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Whole.Cable;

/// <summary>The built program as a process that runs until it is told to stop.</summary>
internal sealed class LiveProgram : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    // An end that is told between a look and the wait for the next line must not cost the whole patience.
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(500);

    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "pulsestream.dll");

    private readonly object _said = new();
    private readonly Process _process;
    private readonly List<string> _output = [];
    private readonly List<string> _error = [];

    public LiveProgram(params string[] args)
    {
        _process = Process.Start(new ProcessStartInfo("dotnet", [Program, .. args])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            WorkingDirectory = Recordings.Root,
        })!;
        _process.OutputDataReceived += (_, read) => Hear(_output, read.Data);
        _process.ErrorDataReceived += (_, read) => Hear(_error, read.Data);
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    public StreamWriter Input => _process.StandardInput;

    public string[] Output => Copy(_output);

    public string[] Error => Copy(_error);

    public bool HasExited => _process.HasExited;

    public int Id => _process.Id;

    public static string Layout(string name) => Recordings.PathOf($"instruments/{name}.json");

    /// <summary>Seconds told so far.</summary>
    public int Seconds => Output.Count(line => line.Contains("\"kind\":\"second\"", StringComparison.Ordinal));

    public JsonElement End => JsonDocument.Parse(Output[^1]).RootElement;

    /// <summary>Waits for what the program says, looking again at each line.</summary>
    public void WaitUntil(Func<LiveProgram, bool> holds)
    {
        var clock = Stopwatch.StartNew();
        lock (_said)
        {
            while (!holds(this))
            {
                Assert.False(clock.Elapsed > Patience || _process.HasExited, $"It never came. Said: {string.Join('\n', Error.TakeLast(5))}");
                Monitor.Wait(_said, LookEvery);
            }
        }
    }

    public void WaitUntilSaid(string words) => WaitUntil(program => program.Error.Any(line => line.Contains(words, StringComparison.Ordinal)));

    /// <summary>Ctrl-C; gives the exit status.</summary>
    public int Interrupt()
    {
        Signal("INT");
        return ExitStatus();
    }

    /// <summary>Stands still, its connections open, as a machine that hangs.</summary>
    public void Stop() => Signal("STOP");

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

    private void Signal(string name)
    {
        using var kill = Process.Start("kill", ["-s", name, $"{_process.Id}"]);
        kill.WaitForExit();
    }

    private void Hear(List<string> to, string? line)
    {
        lock (_said)
        {
            if (line is not null)
            {
                to.Add(line);
            }

            Monitor.PulseAll(_said);
        }
    }

    private string[] Copy(List<string> from)
    {
        lock (_said)
        {
            return [.. from];
        }
    }
}
