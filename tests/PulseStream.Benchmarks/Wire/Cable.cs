using System.Diagnostics;
using PulseStream.Tests.Cli;

namespace PulseStream.Benchmarks.Wire;

/// <summary>Two pseudo-terminals joined by Debian's socat, and the program at their ends.</summary>
internal sealed class Cable : IDisposable
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "pulsestream.dll");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("pulsestream-cable-");
    private readonly Process _socat;

    public Cable()
    {
        _socat = Start("socat", "-d", "-d", $"pty,raw,echo=0,link={Instrument}", $"pty,raw,echo=0,link={Reader}");
        WaitFor(_socat.StandardError, "starting data transfer");
    }

    public string Instrument => Path.Combine(_folder.FullName, "instrument");

    public string Reader => Path.Combine(_folder.FullName, "reader");

    public string Archive => Path.Combine(_folder.FullName, "archive");

    public static string Layout(string name) => Recordings.PathOf($"instruments/{name}.json");

    /// <summary>Starts the program; its output has to be read.</summary>
    public static Process StartProgram(params string[] words) => Start("dotnet", [Program, .. words]);

    /// <summary>Reads lines until one holds the words.</summary>
    public static string WaitFor(StreamReader lines, string words)
    {
        while (lines.ReadLine() is { } line)
        {
            if (line.Contains(words, StringComparison.Ordinal))
            {
                return line;
            }
        }

        throw new InvalidOperationException($"It ended without having said '{words}'.");
    }

    public void Dispose()
    {
        _socat.Kill();
        _socat.WaitForExit();
        _socat.Dispose();
        _folder.Delete(recursive: true);
    }

    private static Process Start(string program, params string[] words) => Process.Start(new ProcessStartInfo(program, words)
    {
        RedirectStandardOutput = true,
        RedirectStandardError = true,
        UseShellExecute = false,
    })!;
}
