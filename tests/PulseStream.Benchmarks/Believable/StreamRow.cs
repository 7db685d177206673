using PulseStream.Readings;
using PulseStream.Simulation;

namespace PulseStream.Benchmarks.Believable;

/// <summary>One kind of stream.</summary>
/// <param name="Name">What the streams are.</param>
/// <param name="Make">Draws a scenario.</param>
internal sealed record StreamRow(string Name, Func<Random, Scenario> Make)
{
    private const int Streams = 12;

    /// <summary>Reads all streams of the row, the same ones each time.</summary>
    public Figures Measure(ReadingOptions options)
    {
        var figures = new Figures();
        for (var seed = 1; seed <= Streams; seed++)
        {
            var scenario = Make(new Random(7919 * seed)) with { Seed = (ulong)seed };
            var told = new Told();
            var reader = new FingerReader(new SimulatedRecording(scenario).Header, CalibrationCurve.TextbookLine, options);
            foreach (var block in new SimulatedRecording(scenario).Blocks(1000))
            {
                reader.Read(block, told);
            }

            reader.Finish(told);
            figures.Add(scenario, told.Seconds, told.Readings);
        }

        return figures;
    }

    private sealed class Told : IReadingObserver
    {
        public List<Second> Seconds { get; } = [];

        public List<Reading> Readings { get; } = [];

        public void OnBeat(in Signal.Beat beat)
        {
            // Beats are counted in the seconds' pulse rates.
        }

        public void OnSecond(in Second second) => Seconds.Add(second);

        public void OnReading(Reading reading) => Readings.Add(reading);

        public void OnSitting(Sitting sitting)
        {
            // The figures are of seconds and readings.
        }
    }
}
