using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Whether there is a finger at all: it takes most of the light away, and what is left is never still.</summary>
internal sealed class Presence(JudgeOptions options)
{
    private const double StillOverNoise = 1.6;
    private const double StillFloor = 2e-5;
    private const double MovingMeans = 6;
    private readonly double[] means = new double[8];
    private double fingerLevel = double.NaN;
    private int count;

    /// <summary>Takes over the light of a believed second.</summary>
    public void Remember(in SignalSecond second) => fingerLevel = Math.Log(second.Light.InfraredCounts);

    /// <summary>Whether nothing but white noise is in the second: no beat, no breath.</summary>
    public static bool IsFlat(in SignalSecond second) =>
        second.Light.LevelSwing <= (StillOverNoise * second.Light.NoiseSwing) + StillFloor;

    /// <summary>Whether the light has left the finger's level and is still. To be asked once a second.</summary>
    public bool IsOpenAir(in SignalSecond second)
    {
        var level = Math.Log(second.Light.InfraredCounts);
        if (double.IsNaN(level))
        {
            return false;
        }

        means[count % means.Length] = level;
        count++;
        return IsFlat(second) && (double.IsNaN(fingerLevel)
            ? count >= 2 && !IsDrifting(second)
            : Math.Abs(level - fingerLevel) > options.OpenAirRise);
    }

    /// <summary>Nothing pulses: air where the light has left the finger's level or never moves, else a finger without a pulse.</summary>
    public Reasons FlatReason(in SignalSecond second)
    {
        var level = Math.Log(second.Light.InfraredCounts);
        var isAway = !double.IsNaN(fingerLevel) && Math.Abs(level - fingerLevel) > options.OpenAirRise;
        return isAway ? Reasons.NoFinger : Reasons.NoPulse;
    }

    // Means of seconds move far more than the noise of a mean: something alive, or at least warm, is in the way.
    private bool IsDrifting(in SignalSecond second)
    {
        var held = Math.Min(count, means.Length);
        double sum = 0, squares = 0;
        for (var k = 0; k < held; k++)
        {
            sum += means[k];
        }

        for (var k = 0; k < held; k++)
        {
            squares += (means[k] - (sum / held)) * (means[k] - (sum / held));
        }

        const double samplesInSecond = 25;
        return Math.Sqrt(squares / held) > (MovingMeans * second.Light.NoiseSwing / Math.Sqrt(samplesInSecond)) + StillFloor;
    }
}
