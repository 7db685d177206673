using PulseStream.Samples;

namespace PulseStream.Benchmarks;

/// <summary>An invented finger at rest in whole counts of an 18-bit converter: what is measured is work, not accuracy.</summary>
internal static class TwoLightSignal
{
    public const double FullScaleCounts = 262143;

    // Both fit a minute in whole cycles, so that a minute that is fed again and again has no step at its seam.
    private const double PulseHz = 1.2;
    private const double BreathHz = 0.25;

    private const double InfraredSwing = 0.01;
    private const double RatioOfRatios = 0.56;
    private const double BreathSwing = 0.002;
    private const double NoiseCounts = 15;
    private const int Seed = 1;

    public static RecordingHeader HeaderAt(double hz) =>
        new("hut.csv", new SampleRate(hz), SampleColumns.Red | SampleColumns.Infrared, FullScaleCounts);

    public static Sample[] At(double hz, int seconds)
    {
        var random = new Random(Seed);
        var samples = new Sample[(int)(hz * seconds)];
        for (var i = 0; i < samples.Length; i++)
        {
            var pulse = InfraredSwing * PulseAt(i / hz);
            var breath = BreathSwing * Math.Sin(Math.Tau * BreathHz * i / hz);
            samples[i] = Sample.OfLight(
                Math.Round((140_000 * Math.Exp(breath - (RatioOfRatios * pulse))) + Noise()),
                Math.Round((150_000 * Math.Exp(breath - pulse)) + Noise()));
        }

        return samples;

        double Noise() => NoiseCounts * ((2 * random.NextDouble()) - 1);
    }

    /// <summary>Cut as a source cuts: a quarter of a second a block.</summary>
    public static IReadOnlyList<SampleBlock> BlocksOf(Sample[] samples, double hz)
    {
        var length = (int)(hz / 4);
        return [.. samples.Chunk(length).Select((part, turn) => new SampleBlock((long)turn * length, part))];
    }

    // A fundamental and its second harmonic: a quick rise, a slow fall.
    private static double PulseAt(double time)
    {
        var phase = Math.Tau * PulseHz * time;
        return Math.Sin(phase) + (0.4 * Math.Sin(2 * phase));
    }
}
