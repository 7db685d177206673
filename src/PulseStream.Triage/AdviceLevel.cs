namespace PulseStream.Triage;

/// <summary>How urgent an advice is, least first, so that levels compare with &lt;.</summary>
public enum AdviceLevel
{
    /// <summary>Nothing found that asks for action.</summary>
    Usual = 0,

    /// <summary>Measure again after a while.</summary>
    Recheck,

    /// <summary>Call a doctor or clinic today.</summary>
    Call,

    /// <summary>A doctor at once, or else the emergency number.</summary>
    DoctorNow,

    /// <summary>The emergency number, now.</summary>
    Emergency,
}
