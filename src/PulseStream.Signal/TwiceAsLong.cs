namespace PulseStream.Signal;

/// <summary>
/// Whether beats of one height come after a short and a long time in turn, the long one twice the short: every third beat of a heart
/// that keeps time is early then, too weak to be seen on the flank of the one before, and its pause makes good for it.
/// </summary>
internal static class TwiceAsLong
{
    // Two of either.
    private const int LeastIntervals = 4;

    // Breathing moves an interval against its neighbours by some hundredths.
    private const double SameShare = 0.06;

    /// <summary>Looks for them in a window.</summary>
    /// <param name="rises">Steepest rises of the beats that were counted, bins, in order.</param>
    public static bool AreInTurn(ReadOnlySpan<double> rises)
    {
        if (rises.Length <= LeastIntervals)
        {
            return false;
        }

        var isLong = rises[1] - rises[0] > rises[2] - rises[1];
        for (var k = 2; k < rises.Length; k++)
        {
            var (former, latter) = (rises[k - 1] - rises[k - 2], rises[k] - rises[k - 1]);
            var (longer, shorter) = isLong ? (former, latter) : (latter, former);
            if (Math.Abs(longer - (2 * shorter)) > SameShare * longer)
            {
                return false;
            }

            isLong = !isLong;
        }

        return true;
    }
}
