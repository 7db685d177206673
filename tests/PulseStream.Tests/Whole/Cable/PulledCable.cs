using System.Diagnostics;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Whole.Cable;

/// <summary>Two pseudo-terminals joined by socat: what is written to the one is read from the other, until it is pulled.</summary>
internal sealed class PulledCable : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private Process? _socat;

    public PulledCable() => Plug();

    public string Instrument => _folder["instrument"];

    public string Reader => _folder["reader"];

    public static void SkipWhereLacking() =>
        Assert.SkipUnless(File.Exists("/usr/bin/socat"), "socat, which makes the pseudo-terminals, is not installed.");

    public void Plug()
    {
        _socat = Process.Start(new ProcessStartInfo("/usr/bin/socat", ["-d", "-d", $"pty,raw,echo=0,link={Instrument}", $"pty,raw,echo=0,link={Reader}"]) { RedirectStandardError = true, UseShellExecute = false })!;
        while (_socat.StandardError.ReadLine() is { } line && !line.Contains("starting data transfer", StringComparison.Ordinal))
        {
        }

        _socat.ErrorDataReceived += static (_, _) => { };
        _socat.BeginErrorReadLine();
    }

    public void Pull()
    {
        _socat!.Kill();
        _socat.WaitForExit();
        _socat.Dispose();
        File.Delete(Instrument);
        File.Delete(Reader);
    }

    public void Dispose()
    {
        Pull();
        _folder.Dispose();
    }
}
