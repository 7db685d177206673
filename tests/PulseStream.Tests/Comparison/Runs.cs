using PulseStream.Comparison;
using PulseStream.Triage;

namespace PulseStream.Tests.Comparison;

/// <summary>Results of invented recordings of a mountain hut.</summary>
internal static class Runs
{
    public static RecordingResults Of(string source, params (long Second, int Spo2)[] readings) => new(source)
    {
        Readings = [.. readings.Select(reading => new AcceptedValue(reading.Second, reading.Spo2))],
        Sittings = [new FingerSpan(0, 60)],
        Seconds = 60,
        UsableSeconds = 45,
    };

    public static RecordingResults Advised(this RecordingResults results, long second, AdviceLevel level) =>
        results with { Advice = [.. results.Advice, new GivenLevel(second, level)] };
}
