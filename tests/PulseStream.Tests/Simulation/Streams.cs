using PulseStream.Simulation;
using PulseStream.Simulation.Episodes;

namespace PulseStream.Tests.Simulation;

/// <summary>Scenarios and plain measures for the tests of the simulator; nothing here knows the signal code.</summary>
internal static class Streams
{
    /// <summary>A finger in which nothing but the pulse moves, finely counted.</summary>
    public static Scenario PulseAlone { get; } = new()
    {
        DurationSeconds = 30,
        RateHz = 500,
        Bits = 24,
        Noise = 0,
        BaselinePercent = 0,
        RespirationPercent = 0,
        BeatVariationPercent = 0,
    };

    public static (double[] Red, double[] Infrared) Light(Scenario scenario)
    {
        var samples = new SimulatedRecording(scenario).Blocks(1000).SelectMany(b => b.Samples.ToArray()).ToArray();
        return (samples.Select(s => s.Red).ToArray(), samples.Select(s => s.Infrared).ToArray());
    }

    public static IReadOnlyList<Episode> Episode(string text) => [ScenarioText.ParseEpisode(text)];

    public static double LogRange(ReadOnlySpan<double> light)
    {
        double low = double.MaxValue, high = 0;
        foreach (var x in light)
        {
            low = Math.Min(low, x);
            high = Math.Max(high, x);
        }

        return Math.Log(high / low);
    }

    public static double[] Slice(double[] light, double rateHz, double from, double to) =>
        light[(int)(from * rateHz)..(int)(to * rateHz)];
}
