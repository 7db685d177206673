namespace PulseStream.Signal;

/// <summary>The polynomials that have nothing in common with each other between −1 and 1.</summary>
internal static class Legendre
{
    /// <summary>Value of one, by the recurrence of their degrees (Bonnet).</summary>
    /// <param name="degree">Its degree.</param>
    /// <param name="time">Where, −1 to 1.</param>
    public static double Of(int degree, double time)
    {
        double before = 0, now = 1;
        for (var k = 0; k < degree; k++)
        {
            (before, now) = (now, ((((2 * k) + 1) * time * now) - (k * before)) / (k + 1));
        }

        return now;
    }
}
