namespace PulseStream.Comparison;

/// <summary>A sitting as results tell it: from the second the finger came on to the second just past its last one.</summary>
/// <param name="From">First second.</param>
/// <param name="To">Just past the last; the advice that closes the sitting carries it.</param>
public readonly record struct FingerSpan(long From, long To)
{
    /// <summary>Whether two sittings share a second.</summary>
    /// <param name="other">A sitting of the other run.</param>
    public bool Meets(FingerSpan other) => From <= other.To && other.From <= To;
}
