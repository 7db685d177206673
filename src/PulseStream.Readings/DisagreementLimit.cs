using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>How far the two lights may disagree in a second that is believed: with what is known of the finger, and beside which line.</summary>
internal sealed class DisagreementLimit(JudgeOptions options)
{
    /// <summary>The largest disagreement with which a window is believed, in units of R.</summary>
    /// <param name="fit">What was told of the window.</param>
    /// <param name="isKnown">Whether the finger's calm pulse is known.</param>
    /// <remarks>
    /// The taller a wave that was never seen as a calm pulse, the more movement may be in it for the same disagreement; and the
    /// line that was taken away may have been the pulse, whose harmonics are lines as well. In what walks at random neither hides.
    /// </remarks>
    public double LargestOf(in RatioFit fit, bool isKnown) =>
        fit.IsPureLine && fit.LinesExplain >= options.Lamp.PurestLineShare && !IsSmallLine(fit) ? options.Lamp.PureLineDisagreement
        : isKnown ? (fit.Lines > 0 ? options.UnprovenDisagreement : options.LargestDisagreement)
        : fit.Lines > 0 && !fit.IsOneLine ? double.NegativeInfinity
        : fit.IsWandering ? options.LargestDisagreement
        : fit.PulseSize <= options.UnprovenPulseSize ? options.UnprovenDisagreement
        : IsSmallLine(fit) ? double.NegativeInfinity
        : options.UnprovenDisagreement * options.UnprovenPulseSize / fit.PulseSize;

    // A line that is next to nothing beside a wave may be the pulse, and the wave a movement; of a few turns anything may be a line.
    private bool IsSmallLine(in RatioFit fit) =>
        fit.Lines > 0
        && (fit.OtherLightSize + fit.RoomLightSize < options.Lamp.SmallestLamp * fit.PulseSize || fit.LineHz * fit.WindowSeconds < options.Lamp.LeastLampTurns);
}
