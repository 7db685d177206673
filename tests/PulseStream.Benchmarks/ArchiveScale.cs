using System.Diagnostics;
using PulseStream.Benchmarks.Wire;
using PulseStream.Tests.Cli;

namespace PulseStream.Benchmarks;

/// <summary>
/// Prints how long `sessions`, `trend` and `compare` take over archives of two sizes, and how large they grow: seconds, and memory
/// that does not grow with the archive.
/// </summary>
internal static class ArchiveScale
{
    private const int Smaller = 4;
    private const double Mebibyte = 1 << 20;

    public static int Print(int sessions)
    {
        var folder = Directory.CreateTempSubdirectory("pulsestream-scale-").FullName;
        try
        {
            Run("replay", Recordings.SlowFall, "--archive", Path.Combine(folder, "pattern"), "--person", "pattern", "--start", "2025-01-01T07:00:00+01:00", "--quiet");
            var pattern = new ManySessions(Path.GetDirectoryName(Directory.GetFiles(folder, "session.json", SearchOption.AllDirectories).Single())!);
            foreach (var count in new[] { sessions / Smaller, sessions })
            {
                var (a, b) = (Path.Combine(folder, $"a{count}"), Path.Combine(folder, $"b{count}"));
                pattern.WriteTo(a, count);
                pattern.WriteTo(b, count);
                Print(count, "sessions", Run("sessions", "--archive", a));
                Print(count, $"trend over {count / 10} sessions of one person", Run("trend", "--archive", a, "--person", ManySessions.Person));
                Print(count, "compare of two such archives", Run("compare", a, b));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }

    private static void Print(int count, string what, (double Seconds, double ProcessorSeconds, long Bytes) run) =>
        Console.WriteLine($"{count} sessions, {what}: {run.Seconds:F1} s ({run.ProcessorSeconds:F1} s of processor time), {run.Bytes / Mebibyte:F0} MiB at most");

    private static (double Seconds, double ProcessorSeconds, long Bytes) Run(params string[] words)
    {
        var clock = Stopwatch.StartNew();
        using var program = Cable.StartProgram(words);
        var read = Task.WhenAll(program.StandardOutput.ReadToEndAsync(), program.StandardError.ReadToEndAsync());
        var (most, spent) = (0L, TimeSpan.Zero);
        while (!program.WaitForExit(TimeSpan.FromMilliseconds(20)))
        {
            program.Refresh();

            // What a process has used is known only as long as it runs.
            if (!program.HasExited)
            {
                (most, spent) = (Math.Max(most, program.PeakWorkingSet64), program.TotalProcessorTime);
            }
        }

        read.Wait();
        return program.ExitCode == 0
            ? (clock.Elapsed.TotalSeconds, spent.TotalSeconds, most)
            : throw new InvalidOperationException($"{string.Join(' ', words)}: {read.Result[1]}");
    }
}
