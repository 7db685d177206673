using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>
/// Light that walks at random from the first second on, by half a percent within a minute, in both lights and with an R of its own: vessels and
/// a pad that settles. A movement from the first second on that hides the pulse disagrees no more.
/// </summary>
public sealed class WanderingLightTests
{
    private const double RateHz = 100;
    private const int Length = 60;
    private const int FromSecond = 15;

    // All but two of the seconds from then on, as near to the truth as an oximeter's last digit tells.
    private const int LeastSeconds = Length - FromSecond - 2;
    private const double Digit = 1;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void APulseBesideItIsRead(int seed)
    {
        const double stepOfSecond = 0.001;
        var random = new Random(seed);
        var walk = new double[(int)(RateHz * Length)];
        for (var n = 1; n < walk.Length; n++)
        {
            walk[n] = walk[n - 1] + (stepOfSecond / Math.Sqrt(RateHz) * Gauss(random));
        }

        var heart = Heart.Of(Length, (_, _) => (60 / 72.0) + (0.015 * Gauss(random)));
        var heard = Heard.Of(RateHz, new Finger
        {
            Seconds = Length,
            PerfusionPercent = 1,
            NoisePercent = 0.002,
            Spo2 = _ => 98,
            Blood = t => heart.Fronts.Where(f => Math.Abs(t - f) < 2).Sum(f => Bell(t - f, 0.09) + (0.45 * Bell(t - f - 0.27, 0.13))),
            Movement = t => (walk[(int)Math.Round(RateHz * t)], 0.9 * walk[(int)Math.Round(RateHz * t)]),
        }.Samples());
        Assert.InRange(heard.Usable.Count(s => s.SecondIndex >= FromSecond), LeastSeconds, Length - FromSecond);
        Assert.All(heard.Usable, s => Assert.Equal(98, s.Spo2!.Value.Percent, Digit));
    }

    // A wave eight times the pulse, with a heart's form and R of 0.9, above a pulse of R 0.46.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void AMovementThatHidesThePulseIsNot(int seed)
    {
        var random = new Random(seed);
        var heart = Heart.Of(Length, (_, _) => (60 / 68.0) + (0.015 * Gauss(random)), secondWave: 0.2);
        var wave = Heart.Of(Length, (_, _) => (60 / 97.0) + (0.01 * Gauss(random)));
        var heard = Heard.Of(RateHz, new Finger
        {
            Seconds = Length,
            PerfusionPercent = 1,
            Spo2 = _ => 98.5,
            Blood = heart.BloodAt,
            Movement = t => (-0.08 * wave.BloodAt(t), -0.072 * wave.BloodAt(t)),
        }.Samples());
        Assert.Empty(heard.Usable);
    }

    private static double Bell(double seconds, double deviation) => Math.Exp(-0.5 * seconds * seconds / (deviation * deviation));

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
