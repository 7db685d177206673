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
    public bool Is(in SignalSecond second, double ratio, double logHeight) =>
        double.IsNaN(logHeight) ? IsLoneLine(second) : IsCalmWithout(second, ratio, logHeight);

    /// <summary>Whether most of what both lights show may be room light: a wave with a rhythm, of as many counts in either. A movement may by chance have its mixture, and so may the pulse that was told from one.</summary>
    /// <param name="second">The second.</param>
    public bool IsMost(in SignalSecond second) =>
        !second.Fit.IsSeparated
        && (second.Fit.Lines == 0 || second.Fit.IsOneLine)
        && Math.Abs(second.Fit.Ratio - MixOf(second)) < options.RoomLightDistance
        && second.Pulse.Periodicity >= options.LeastPeriodicity
        && !(second.Pulse.UnsteadyShare > UnevenShare);

    /// <summary>Whether a line lies off a pulse's first wave.</summary>
    /// <param name="hz">Its frequency.</param>
    /// <param name="periodSeconds">The pulse's period, s; 0 where none is known.</param>
    public bool IsOffFirstWave(double hz, double periodSeconds) => Math.Abs((hz * periodSeconds) - 1) >= options.HarmonicDistance;

    // Without a calm finger to compare with, a line of equal counts has to be nearly all that the lights disagree by.
    private bool IsLoneLine(in SignalSecond second) =>
        LeavesPulse(second)
        && second.Fit.Newest.LineShare > options.LoneRoomLightLineShare
        && second.Fit.Disagreement < options.LoneRoomLightDisagreement;

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
