using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Tells whether what the two lights disagree by is mains light: one frequency, as many counts in either channel.</summary>
internal sealed class RoomLight(JudgeOptions options)
{
    // Nearer to R than this, room light mixes its red and infrared as blood does.
    private const double LeastMixDistance = 0.05;

    // More than half of a wave's power is no one rate's: no lamp, even with a pulse beside it.
    private const double UnevenShare = 0.7;

    /// <summary>Red over infrared, in the logarithm of light, of what adds the same counts to both channels.</summary>
    /// <param name="second">The second.</param>
    public static double MixOf(in SignalSecond second) => second.Light.InfraredCounts / second.Light.RedCounts;

    /// <summary>Whether mains light is what the lights disagree by.</summary>
    /// <param name="second">The second.</param>
    /// <param name="ratio">R of the calm finger.</param>
    /// <param name="logHeight">Logarithm of its pulse's size; NaN where no calm second has been seen.</param>
    /// <remarks>A movement reaches both lights at once; a line of equal counts is room light in any phase where nothing else is left.</remarks>
    public bool Is(in SignalSecond second, double ratio, double logHeight) =>
        IsSteadyLine(second) || (double.IsNaN(logHeight) ? IsLoneLine(second) : IsCalmWithout(second, ratio, logHeight) || IsCalmBesideLine(second, ratio, logHeight));

    /// <summary>Whether most of what both lights show may be room light: a wave with a rhythm, of as many counts in either. A movement may by chance have its mixture, and so may the pulse that was told from one.</summary>
    /// <param name="second">The second.</param>
    public bool IsMost(in SignalSecond second) =>
        !second.Fit.IsSeparated
        && (second.Fit.Lines == 0 || second.Fit.IsOneLine)
        && Math.Abs(second.Fit.Ratio - MixOf(second)) < options.RoomLightDistance
        && second.Pulse.Periodicity >= options.LeastPeriodicity
        && !(second.Pulse.UnsteadyShare > UnevenShare);

    /// <summary>Whether what disturbs is as much one frequency as a lamp: a hand that shakes does not keep so steady.</summary>
    /// <param name="second">The second.</param>
    public bool IsOneLine(in SignalSecond second) =>
        second.Fit.Lines > 0 ? second.Fit.IsOneLine && second.Fit.LinesExplain >= options.Lamp.PurestLineShare && !second.Fit.IsWideLine
        : second.Fit.Newest.LineShare > options.SteadyLineShare;

    /// <summary>Whether a line lies off a pulse's first wave.</summary>
    /// <param name="hz">Its frequency.</param>
    /// <param name="periodSeconds">The pulse's period, s; 0 where none is known.</param>
    public bool IsOffFirstWave(double hz, double periodSeconds) => Math.Abs((hz * periodSeconds) - 1) >= options.HarmonicDistance;

    /// <summary>Whether the newest line lies on one of a pulse's waves: what moves with the heart, as veins do, may by chance move as many counts of either light.</summary>
    /// <param name="second">The second.</param>
    /// <param name="periodSeconds">The pulse's period, s.</param>
    public bool IsOnHarmonic(in SignalSecond second, double periodSeconds)
    {
        var harmonic = second.Fit.Newest.LineHz * periodSeconds;
        return Math.Abs(harmonic - Math.Round(harmonic)) < options.HarmonicDistance;
    }

    private bool IsSteadyLine(in SignalSecond second) =>
        LeavesPulse(second)
        && second.Fit.Newest.LineShare > options.SteadyLineShare
        && second.Fit.Disagreement <= options.UnprovenDisagreement;

    // Without a calm finger to compare with, a line of equal counts has to be nearly all that the lights disagree by.
    private bool IsLoneLine(in SignalSecond second) =>
        LeavesPulse(second)
        && second.Fit.Newest.LineShare > options.LoneRoomLightLineShare
        && second.Fit.Disagreement < options.LoneRoomLightDisagreement;

    // The calm finger's pulse is what was left, of its height and nearly its ratio, though not cleanly enough to be believed.
    private bool IsCalmBesideLine(in SignalSecond second, double ratio, double logHeight) =>
        LeavesPulse(second)
        && second.Fit.Newest.LineShare > options.RoomLightLineShare
        && second.Fit.Disagreement < options.LargestDisagreement
        && Math.Abs(second.Fit.Ratio - ratio) < options.SeparatedJump
        && Math.Abs(Math.Log(second.Fit.PulseSize) - logHeight) < options.SameHeight;

    // Room light that was taken away leaves a pulse, which repeats; movement leaves movement.
    private bool LeavesPulse(in SignalSecond second) =>
        second.Fit.IsRoomLight && second.Pulse.Periodicity >= options.LeastPeriodicityBesideRoomLight;

    // One frequency, the same counts in both channels, and the calm finger's own pulse is left without it.
    private bool IsCalmWithout(in SignalSecond second, double ratio, double logHeight)
    {
        var newest = second.Fit.Newest;
        var mix = MixOf(second);
        var distance = Math.Abs(mix - ratio);
        return distance > LeastMixDistance
            && newest.LineShare > options.RoomLightLineShare
            && Math.Abs(newest.MixOfDisturbance(ratio) - mix) < options.SameMixShare * distance
            && Math.Abs(Math.Log(newest.SizeWithout(mix) / distance) - logHeight) < options.SameHeight;
    }
}
