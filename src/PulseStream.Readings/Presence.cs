using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Whether there is a finger at all: it takes most of the light away, and what is left is never still.</summary>
internal sealed class Presence(JudgeOptions options)
{
    // White noise alone scatters by its own size, known to a few tenths of it from one second; the floor is the rounding of
    // a 16-bit converter in the middle of its range.
    private const double StillOverNoise = 1.6;
    private const double StillFloor = 2e-5;

    // The slowest rate gives the fewest samples to a mean; six of its deviations are no chance.
    private const double FewestSamples = 25;
    private const double MovingMeans = 6;
    private const int StillSeconds = 2;

    // What shakes fast looks like noise at the smoothing's edge; white noise is alike in the band and beyond it, and does not make a window's pulse.
    private const double PulseOverNoise = 2.5;
    private const double MovingShare = 0.25;

    // Thirty times what the light of an emitter is let scatter by, and more than a pulse that stops at once leaves in it.
    private const double LargestNoise = 3e-3;

    // What swings by less than a tenth of the way that the light has gone does not swing between finger and air.
    private const double StayingShare = 0.1;

    // What is left of a second may lie between two fronts of a slow beat, and two such seconds as well: they count for what there is of them.
    private const double LargestMissing = 0.2;

    private readonly StoppedPulse pulse = new(options);
    private readonly double[] means = new double[8];
    private double fingerInfrared = double.NaN;
    private double fingerRed = double.NaN;
    private int count;
    private double stillSeconds;
    private long newestSecond;
    private int awaySeconds;
    private int otherSeconds;
    private bool staysAway;
    private bool isStill;

    // Further back than any recording reaches, and no difference to it overflows.
    private long pulseSecond = long.MinValue / 2;

    /// <summary>Takes over the light of a believed second.</summary>
    public void Remember(in SignalSecond second)
    {
        fingerInfrared = Math.Log(second.Light.InfraredCounts);
        fingerRed = Math.Log(second.Light.RedCounts);
        pulse.Remember(second);
    }

    /// <summary>Takes in every second, believed or not.</summary>
    public void See(in SignalSecond second)
    {
        var change = ChangeOf(second);
        newestSecond = second.SecondIndex;
        count = double.IsNaN(second.Light.InfraredCounts) ? 0 : count;
        isStill = false;
        otherSeconds = change > options.LeakRise ? otherSeconds + 1 : 0;
        staysAway = change > options.Absence.OpenAirRise && second.Light.LevelSwing < StayingShare * change;
        awaySeconds = staysAway ? awaySeconds + 1 : 0;
        pulse.See(second, change > options.LeakRise);
    }

    /// <summary>Whether nothing but white noise is in the second: no beat, no breath.</summary>
    public static bool IsFlat(in SignalSecond second) =>
        second.Light.LevelSwing <= (StillOverNoise * second.Light.NoiseSwing) + StillFloor
        && !(HasPulse(second) && second.Light.LevelSwing > MovingShare * second.Fit.PulseSize);

    private static bool HasPulse(in SignalSecond second) =>
        second.Fit.WindowSeconds > 0 && second.Fit.PulseSize > PulseOverNoise * second.Fit.NoiseSize;

    private bool HasStopped(in SignalSecond second) =>
        HasPulse(second) && second.Light.LevelSwing < options.Absence.StoppedPulseShare * second.Fit.PulseSize;

    /// <summary>Whether there is air in the clip: light that has left the finger's level and its pulse, still light that has left either, or that stays still for seconds. To be asked once a second.</summary>
    public bool IsOpenAir(in SignalSecond second)
    {
        var level = Math.Log(second.Light.InfraredCounts);
        if (IsAway(second) && pulse.IsNone(second))
        {
            isStill = true;
            return true;
        }

        if (double.IsNaN(level) || !IsFlat(second) || IsShaken(second))
        {
            count = 0;
            return false;
        }

        isStill = true;
        means[count % means.Length] = level;
        count++;
        stillSeconds = (count == 1 ? 0 : stillSeconds) + 1 - second.Light.MissingShare;
        return IsAway(second)
            || (second.Light.MissingShare < LargestMissing && HasStopped(second))
            || (count >= StillSeconds && stillSeconds >= StillSeconds * (1 - LargestMissing) && !IsDrifting(second));
    }

    /// <summary>What may be in the clip where nothing pulses and there is no finger: nothing where both lights have brightened; where they have not, or no finger was seen to compare with, something lifeless as well.</summary>
    public Reasons Absence(in SignalSecond second)
    {
        var infrared = Math.Log(second.Light.InfraredCounts) - fingerInfrared;
        var red = Math.Log(second.Light.RedCounts) - fingerRed;
        return infrared >= options.Absence.OpenAirRise && !(red < options.Absence.OpenAirRise) ? Reasons.NoFinger : Reasons.NoFinger | Reasons.Misplaced;
    }

    /// <summary>Whether the light of the second seen last has left the finger's level, stays where it is and shows no pulse yet, or has left it with its pulse: the finger has gone, however what is left flickers.</summary>
    public bool IsGone => !HasItsPulse && (staysAway || pulse.HasLeft);

    /// <summary>Whether a second without a finger says that it has left: still light does, light that is not still may be a finger half off and has to stay for a window.</summary>
    public bool IsLeft => isStill || !IsGone || HasLeft;

    /// <summary>Whether what pulsed has gone, its light for a window or its pulse: whatever comes back into the finger's light has been put in anew.</summary>
    public bool HasLeft => !HasItsPulse && (awaySeconds >= options.SettlingSeconds || pulse.HasLeft);

    /// <summary>A sound pulse of the finger's rate was seen: where all of its window is in another light, the finger is half off and has not left.</summary>
    /// <param name="second">The second seen last.</param>
    public void SeePulse(in SignalSecond second) => pulseSecond = second.Fit.WindowSeconds <= otherSeconds ? newestSecond : pulseSecond;

    /// <summary>Whether the light has left the finger's level by more than blood or a grip change it.</summary>
    public bool IsAway(in SignalSecond second) => ChangeOf(second) > options.Absence.OpenAirRise;

    // A window later it says nothing any more.
    private bool HasItsPulse => newestSecond - pulseSecond < options.SettlingSeconds;

    // Without red, infrared tells.
    private double ChangeOf(in SignalSecond second) =>
        double.MaxNumber(Math.Abs(Math.Log(second.Light.InfraredCounts) - fingerInfrared), Math.Abs(Math.Log(second.Light.RedCounts) - fingerRed));

    // So much noise in the finger's own light is no converter's: what shakes fast is as strong beyond the band as in it.
    private bool IsShaken(in SignalSecond second) =>
        second.Light.NoiseSwing > LargestNoise
        && Math.Abs(Math.Log(second.Light.InfraredCounts) - fingerInfrared) <= options.Absence.OpenAirRise;

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

        return Math.Sqrt(squares / held) > (MovingMeans * second.Light.NoiseSwing / Math.Sqrt(FewestSamples)) + StillFloor;
    }
}
