namespace PulseStream.Triage;

/// <summary>An accepted SpO2 of the same person from before.</summary>
public sealed record EarlierReading
{
    /// <summary>Makes one.</summary>
    /// <param name="spo2Percent">Unrounded where it is known so, percent, 0 to 100.</param>
    /// <param name="minutesBefore">Minutes before what is judged now, or before the session's start where it is the history of one; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A saturation outside 0 to 100, a time that is negative or not finite.</exception>
    public EarlierReading(double spo2Percent, double minutesBefore)
    {
        Spo2Percent = Limits.Percent(spo2Percent, nameof(spo2Percent));
        MinutesBefore = Limits.NotNegative(minutesBefore, nameof(minutesBefore));
    }

    /// <summary>SpO2, percent.</summary>
    public double Spo2Percent { get; }

    /// <summary>Minutes before.</summary>
    public double MinutesBefore { get; }
}
