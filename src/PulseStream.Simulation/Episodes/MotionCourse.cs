using PulseStream.Simulation.Chance;
using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>Courses of movement, each with mean 0 and deviation 1.</summary>
internal static class MotionCourse
{
    // Four octaves of equal power: slow sway to quick twitch, the power falling with frequency.
    private const int Octaves = 4;
    private const double SlowestKnotSeconds = 0.8;

    // Nobody taps like a clock: the phase wanders by a tenth of a cycle.
    private const double WanderRadians = 0.6;
    private const double WanderKnotSeconds = 3;

    private const double SecondHarmonic = 0.4;
    private const int WanderStream = 4;

    /// <summary>The course that both channels know.</summary>
    public static double Shared(MotionEpisode motion, in Instant now, ulong stream) => motion.Kind switch
    {
        MotionKind.Rhythmic => Wave((Math.Tau * motion.Hz * now.Seconds) + Wander(now.Seconds, stream)),
        MotionKind.Pulse => Wave((Math.Tau * now.BeatPhase) + StartPhase(stream)),
        _ => Broadband(now.Seconds, stream),
    };

    /// <summary>A random course, about 0.3 to 5 Hz.</summary>
    public static double Broadband(double seconds, ulong stream)
    {
        var sum = 0.0;
        var knots = SlowestKnotSeconds;
        for (ulong octave = 0; octave < Octaves; octave++)
        {
            sum += new SmoothNoise(new SplitMix(stream, octave), knots).At(seconds);
            knots /= 2;
        }

        return sum / Math.Sqrt(Octaves);
    }

    private static double Wander(double seconds, ulong stream) =>
        StartPhase(stream) + (WanderRadians * new SmoothNoise(new SplitMix(stream, WanderStream), WanderKnotSeconds).At(seconds));

    private static double StartPhase(ulong stream) => Math.Tau * new SplitMix(stream, WanderStream).Uniform(-1);

    private static double Wave(double phase) =>
        Math.Sqrt(2 / (1 + (SecondHarmonic * SecondHarmonic))) * (Math.Sin(phase) + (SecondHarmonic * Math.Sin((2 * phase) + 1)));
}
