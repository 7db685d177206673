namespace PulseStream.Accuracy.Responses;

/// <summary>How an instrument followed one change from a settled level to another.</summary>
/// <param name="Quantity">Saturation or pulse rate.</param>
/// <param name="At">When the truth changed: half-way of the reference's change or as told, else where the instrument's own change begins, in seconds.</param>
/// <param name="From">Level before.</param>
/// <param name="To">Level after.</param>
/// <param name="DelaySeconds">From <paramref name="At"/> until the instrument is half-way.</param>
/// <param name="RiseSeconds">From 10 to 90 % of the way.</param>
/// <param name="Overshoot">By how much it goes past the new level, in its own unit.</param>
/// <param name="AveragingSeconds">Length of the running mean that would follow as slowly, the reference's own slowness taken off.</param>
public sealed record StepResponse(
    Quantity Quantity, double At, double From, double To, double DelaySeconds, double RiseSeconds, double Overshoot, double AveragingSeconds)
{
    /// <summary>Overshoot as a share of the step, percent.</summary>
    public double OvershootPercent => 100 * Overshoot / Math.Abs(To - From);
}
