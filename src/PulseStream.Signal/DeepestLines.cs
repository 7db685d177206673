namespace PulseStream.Signal;

/// <summary>The two frequencies of a search without which least is left.</summary>
internal struct DeepestLines()
{
    /// <summary>What is left without the one, and its frequency, Hz.</summary>
    public (double Left, double Hz) First { get; private set; } = (double.PositiveInfinity, double.NaN);

    /// <summary>What is left without the other, and its frequency, Hz; NaN where there was one alone.</summary>
    public (double Left, double Hz) Second { get; private set; } = (double.PositiveInfinity, double.NaN);

    /// <summary>Takes in one more.</summary>
    /// <param name="left">What is left without it.</param>
    /// <param name="hz">Its frequency.</param>
    public void See(double left, double hz)
    {
        if (left < First.Left)
        {
            Second = First;
            First = (left, hz);
        }
        else if (left < Second.Left)
        {
            Second = (left, hz);
        }
    }
}
