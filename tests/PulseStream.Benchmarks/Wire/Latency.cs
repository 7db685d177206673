using System.Diagnostics;
using System.Net.ServerSentEvents;
using System.Text;
using System.Text.Json;
using PulseStream.Simulation;
using PulseStream.Sources.Live;
using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Benchmarks.Wire;

/// <summary>
/// From the last byte of a sample on the wire to the event that carries it on the page: an instrument of 50 Hz on a
/// pseudo-terminal, `serve` at its other end, the page's event stream over loopback. A second's result counts from the
/// second's last sample.
/// </summary>
internal static class Latency
{
    private const int MeasuredSeconds = 60;
    private const string LayoutName = "hut-text";

    public static async Task<int> Print()
    {
        var file = Cable.Layout(LayoutName);
        var layout = WireLayoutFile.Parse(File.ReadAllBytes(file), file);
        using var cable = new Cable();
        using var server = Cable.StartProgram("serve", cable.Reader, "--layout", file, "--port", "0", "--quiet");
        try
        {
            var page = new Uri(Cable.WaitFor(server.StandardOutput, "Page: ")["Page: ".Length..]);
            var samples = MeasuredSeconds * (int)layout.Rate.Hz;
            var (said, waves, seconds) = (new long[samples], new List<double>(), new List<double>());
            using var client = new HttpClient { Timeout = Timeout.InfiniteTimeSpan };
            using var events = await client.GetStreamAsync(new Uri(page, "events"));
            var saying = Task.Factory.StartNew(() => Say(cable.Instrument, layout, said), TaskCreationOptions.LongRunning);
            await Listen(events, (int)layout.Rate.Hz, said, waves, seconds);
            await saying;
            Print("wave: sample on the wire to event", waves);
            Print("second: last sample on the wire to result", seconds);
        }
        finally
        {
            server.Kill();
        }

        return 0;
    }

    private static void Say(string port, WireLayout layout, long[] said)
    {
        using var line = SerialLine.Open(port, layout.Line);
        var encoder = new WireEncoder(layout);
        var recording = new SimulatedRecording(new Scenario { DurationSeconds = MeasuredSeconds, RateHz = layout.Rate.Hz, Seed = 7 });
        var began = Stopwatch.GetTimestamp();
        var index = 0;
        foreach (var sample in recording.Blocks((int)layout.Rate.Hz).SelectMany(block => block.Samples.ToArray()))
        {
            var bytes = encoder.Say(index, sample);
            var wait = TimeSpan.FromSeconds(layout.Rate.SecondsAt(index)) - Stopwatch.GetElapsedTime(began);
            if (wait > TimeSpan.Zero)
            {
                Task.Delay(wait).Wait();
            }

            Volatile.Write(ref said[index++], Stopwatch.GetTimestamp());
            line.Write(bytes);
        }
    }

    private static async Task Listen(Stream events, int hz, long[] said, List<double> waves, List<double> seconds)
    {
        await foreach (var told in SseParser.Create(events, (_, bytes) => JsonElement.Parse(Encoding.UTF8.GetString(bytes))).EnumerateAsync())
        {
            var now = Stopwatch.GetTimestamp();
            if (told.EventType == "wave")
            {
                var first = told.Data.GetProperty("index").GetInt32();
                var count = told.Data.GetProperty("heights").GetArrayLength();
                waves.AddRange(Enumerable.Range(first, count).Select(index => Stopwatch.GetElapsedTime(said[index], now).TotalMilliseconds));
            }
            else if (told.EventType == "second")
            {
                var second = told.Data.GetProperty("second").GetInt32();
                seconds.Add(Stopwatch.GetElapsedTime(said[((second + 1) * hz) - 1], now).TotalMilliseconds);

                // The last second of all is told only when the session ends.
                if (second == MeasuredSeconds - 2)
                {
                    return;
                }
            }
        }
    }

    private static void Print(string what, List<double> milliseconds)
    {
        milliseconds.Sort();
        Console.WriteLine($"{what}: median {milliseconds[milliseconds.Count / 2]:F1} ms, 99th percentile {milliseconds[(int)(milliseconds.Count * 0.99)]:F1} ms, worst {milliseconds[^1]:F1} ms, of {milliseconds.Count}");
    }
}
