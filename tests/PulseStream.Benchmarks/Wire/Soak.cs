using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace PulseStream.Benchmarks.Wire;

/// <summary>
/// An hour of signal at a hundred times its speed over a pseudo-terminal into `read` with an archive. Prints what was lost,
/// and the resident size after each ten minutes of signal: it must not grow.
/// </summary>
internal static class Soak
{
    private const int SignalSeconds = 3600;
    private const int Speed = 100;
    private const int LookEverySeconds = 600;

    // By then everything has been compiled and every buffer has its size.
    private const int FirstLookSeconds = 300;
    private const double Mebibyte = 1 << 20;

    public static int Print()
    {
        using var cable = new Cable();
        using var reader = Cable.StartProgram(
            "read", cable.Reader, "--layout", Cable.Layout("hut-binary"), "--archive", cable.Archive, "--format", "ndjson", "--give-up-after", "3");
        Cable.WaitFor(reader.StandardError, "waiting for the instrument");
        _ = reader.StandardError.ReadToEndAsync();
        using var player = Cable.StartProgram(
            "simulate", "--to", cable.Instrument, "--layout", Cable.Layout("hut-binary"), "--seconds", Text(SignalSeconds), "--speed", Text(Speed), "--quiet");
        var clock = Stopwatch.StartNew();
        var (sizes, end) = Follow(reader);
        Console.WriteLine($"{SignalSeconds} s of signal in {clock.Elapsed.TotalSeconds:F0} s: {end.GetProperty("samples")} samples, {end.GetProperty("missing")} missing, {end.GetProperty("refusedRows")} frames refused");
        Console.WriteLine($"resident size: first {sizes[0] / Mebibyte:F1} MiB, last {sizes[^1] / Mebibyte:F1} MiB, all {string.Join(' ', sizes.Select(size => (size / Mebibyte).ToString("F1", CultureInfo.InvariantCulture)))}");
        player.WaitForExit();
        reader.WaitForExit();
        return end.GetProperty("missing").GetInt64() == 0 ? 0 : 1;
    }

    private static (List<long> Sizes, JsonElement End) Follow(Process reader)
    {
        var (sizes, next) = (new List<long>(), FirstLookSeconds);
        while (reader.StandardOutput.ReadLine() is { } line)
        {
            var told = JsonElement.Parse(line);
            if (told.GetProperty("kind").ValueEquals("end"))
            {
                return (sizes, told);
            }

            if (told.GetProperty("kind").ValueEquals("second") && told.GetProperty("second").GetInt32() >= next)
            {
                reader.Refresh();
                sizes.Add(reader.WorkingSet64);
                next += LookEverySeconds;
            }
        }

        throw new InvalidOperationException("The reader ended without its last line.");
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
