using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace PulseStream.Benchmarks;

/// <summary>Runs the same stages with a general-purpose library: scipy_pipeline.py beside this file, on one core.</summary>
internal static class ScipyPipeline
{
    // Debian's python3-scipy; another interpreter that has it can be named in PULSESTREAM_PYTHON.
    private static readonly string Python = Environment.GetEnvironmentVariable("PULSESTREAM_PYTHON") ?? "/usr/bin/python3";

    /// <summary>Samples a second.</summary>
    public static double SamplesPerSecond(int seconds, int hz)
    {
        var start = new ProcessStartInfo(Python) { RedirectStandardOutput = true, UseShellExecute = false };
        start.ArgumentList.Add(Script());
        start.ArgumentList.Add(seconds.ToString());
        start.ArgumentList.Add(hz.ToString());
        foreach (var library in (string[])["OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"])
        {
            start.Environment[library] = "1";
        }

        using var process = Process.Start(start)!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? double.Parse(text) : throw new InvalidOperationException($"{Python} with SciPy ended with {process.ExitCode}.");
    }

    private static string Script([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "scipy_pipeline.py");
}
