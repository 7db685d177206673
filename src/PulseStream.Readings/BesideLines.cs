using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>What a line of mains light leaves of a pulse when it lies on one of its harmonics and takes that along.</summary>
internal sealed class BesideLines(JudgeOptions options)
{
    /// <summary>Whether the first wave is left, which the third harmonic is compared with.</summary>
    /// <param name="second">The second.</param>
    public bool LeavesFirstWave(in SignalSecond second) => second.Fit.Lines == 0 || HarmonicOf(second) != 1;

    /// <summary>Whether a wave that lost its front to one pure line is a pulse none the less: by its third harmonic, and by beats that are all alike.</summary>
    /// <param name="second">The second.</param>
    public bool LeavesPulse(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return second.Fit.IsPureLine
            && HarmonicOf(second) > 1
            && pulse.ThirdWaveShare >= options.Form.LeastThirdWaveShareBesideBreathing
            && pulse.Periodicity >= options.Form.LeastThirdWavePeriodicity
            && pulse.Agreement >= options.Form.LeastThirdWaveAgreement;
    }

    // Which harmonic of the wave the line lies on, as far as the window tells; 0 between them and below the first.
    private int HarmonicOf(in SignalSecond second)
    {
        var harmonic = second.Fit.LineHz * second.Pulse.PeriodSeconds;
        var nearest = Math.Round(harmonic);
        return Math.Abs(harmonic - nearest) < options.HarmonicDistance ? (int)nearest : 0;
    }
}
