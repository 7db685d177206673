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
        // Its outputs are its own: one that is left over must not hold those of the tests open.
        _socat = Process.Start(new ProcessStartInfo("/usr/bin/socat", ["-d", "-d", $"pty,raw,echo=0,link={Instrument}", $"pty,raw,echo=0,link={Reader}"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        })!;
        while (_socat.StandardError.ReadLine() is { } said && !said.Contains("starting data transfer", StringComparison.Ordinal))
        {
        }

        Assert.True(File.Exists(Instrument) && File.Exists(Reader), "socat made no pseudo-terminals.");
    }

    public void Pull()
    {
        if (_socat is null)
        {
            return;
        }

        _socat.Kill();
        _socat.WaitForExit();
        _socat.Dispose();
        _socat = null;
        File.Delete(Instrument);
        File.Delete(Reader);
    }

    public void Dispose()
    {
        Pull();
        _folder.Dispose();
    }
}
