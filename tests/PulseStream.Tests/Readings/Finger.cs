using PulseStream.Samples;

namespace PulseStream.Tests.Readings;

/// <summary>A finger for the reader's tests, from a pulse shape, R = (110 − S) / 25, breathing and white noise; nothing here knows the signal code.</summary>
internal sealed record Finger
{
    private const double InfraredCounts = 80_000;
    private const double RedCounts = 60_000;

    public double RateHz { get; init; } = 100;

    public double Seconds { get; init; } = 30;

    public double PulsePerMinute { get; init; } = 72;

    /// <summary>Blood volume, 0 to 1, at a time in seconds, where the heart does not beat evenly; else <see cref="PulsePerMinute"/> says it.</summary>
    public Func<double, double>? Blood { get; init; }

    /// <summary>Percent at a time in seconds.</summary>
    public Func<double, double> Spo2 { get; init; } = _ => 97;

    public double PerfusionPercent { get; init; } = 2;

    public double BreathingPercent { get; init; } = 0.5;

    /// <summary>White noise of each light, percent of it.</summary>
    public double NoisePercent { get; init; } = 0.01;

    /// <summary>Movement's logarithm of infrared and red at a time in seconds.</summary>
    public Func<double, (double Infrared, double Red)> Movement { get; init; } = _ => default;

    public int Seed { get; init; } = 1;

    /// <summary>Blood volume, 0 to 1, at a phase in beats: a front of a fifth of the beat and a slow fall.</summary>
    public static double Volume(double phase)
    {
        const double front = 0.2;
        var p = phase - Math.Floor(phase);
        return p < front
            ? 0.5 * (1 - Math.Cos(Math.PI * p / front))
            : 0.5 * (1 + Math.Cos(Math.PI * (p - front) / (1 - front)));
    }

    public Sample?[] Samples()
    {
        var noise = new Random(Seed);
        var samples = new Sample?[(int)(Seconds * RateHz)];
        for (var n = 0; n < samples.Length; n++)
        {
            var light = LightAt(n / RateHz);
            samples[n] = Sample.OfLight(
                RedCounts * Math.Exp(light.Red + (NoisePercent / 100 * Gauss(noise))),
                InfraredCounts * Math.Exp(light.Infrared + (NoisePercent / 100 * Gauss(noise))));
        }

        return samples;
    }

    /// <summary>Nothing in the clip: steady light with its noise.</summary>
    public Sample?[] Air() => (this with { PerfusionPercent = 0, BreathingPercent = 0, Movement = _ => (0.9, 0.9) }).Samples();

    private (double Infrared, double Red) LightAt(double t)
    {
        // About its mean, so that a fall of saturation moves no steady light.
        var pulse = PerfusionPercent / 100 * ((Blood?.Invoke(t) ?? Volume(t * PulsePerMinute / 60)) - 0.5);
        var breath = BreathingPercent / 200 * Math.Sin(2 * Math.PI * 0.25 * t);
        var movement = Movement(t);
        var ratio = (110 - Spo2(t)) / 25;
        return (breath - pulse + movement.Infrared, breath - (ratio * pulse) + movement.Red);
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
