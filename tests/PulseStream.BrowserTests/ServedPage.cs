using System.Diagnostics;
using Xunit;

namespace PulseStream.BrowserTests;

/// <summary>The program as its own process, serving a page on a free port.</summary>
internal sealed class ServedPage : IDisposable
{
    private const string Announced = "Page: ";

    private readonly Process _process;

    private ServedPage(Process process, Uri url) => (_process, Url) = (process, url);

    public Uri Url { get; }

    /// <summary>Standard input of the program, for a recording that comes while the page is looked at.</summary>
    public StreamWriter Input => _process.StandardInput;

    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public static ServedPage Of(params string[] words)
    {
        var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "pulsestream.dll"), "serve", .. words, "--port", "0"])
        {
            WorkingDirectory = Root,
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        })!;
        var line = process.StandardOutput.ReadLine();
        Assert.StartsWith(Announced, line, StringComparison.Ordinal);
        return new ServedPage(process, new Uri(line![Announced.Length..]));
    }

    /// <summary>Ctrl-C; gives the exit status.</summary>
    public int Interrupted()
    {
        Signal("INT");
        _process.WaitForExit(TimeSpan.FromSeconds(20));
        return _process.ExitCode;
    }

    /// <summary>Stands still, its connections open, as a machine that hangs.</summary>
    public void Stop() => Signal("STOP");

    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
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

    private static string FindRoot(string folder) => File.Exists(Path.Combine(folder, "PulseStream.sln"))
        ? folder
        : FindRoot(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The project's folder is not above the tests."));
}
