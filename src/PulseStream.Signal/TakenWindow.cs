namespace PulseStream.Signal;

/// <summary>The window that a second is read from, as it was taken, and what was told of it.</summary>
/// <param name="room">Where it is kept.</param>
internal sealed class TakenWindow(WindowRoom room)
{
    private readonly double[] linesHz = new double[LineRemover.MostLines];

    /// <summary>Begins with infrared and red in turn: longer windows may have been there before.</summary>
    public Span<double> Room => room.Best;

    /// <summary>What was told of it.</summary>
    public RatioFit Fit { get; private set; }

    /// <summary>What was taken away as slow.</summary>
    public SlowEdge Edge { get; set; }

    /// <summary>Whether its lines were taken away as what is added in counts.</summary>
    public bool AreLinesAdded { get; private set; }

    /// <summary>White noise of a bin of it.</summary>
    public WhiteNoise Noise { get; private set; }

    /// <summary>Frequencies of the lines that were taken away, Hz, the strongest first.</summary>
    public ReadOnlySpan<double> LinesHz => linesHz.AsSpan(0, Fit.Lines);

    /// <summary>Infrared and red in turn.</summary>
    public Span<double> Pairs => Room[..(2 * room.Design.WindowBins(Fit.WindowSeconds))];

    /// <summary>Nothing has been taken yet.</summary>
    public void Restart() => Fit = default;

    /// <summary>Takes the window that is loaded where its lights agree better.</summary>
    /// <param name="loaded">The window.</param>
    /// <param name="fit">What was told of it.</param>
    public void TakeBetter(LoadedWindow loaded, in RatioFit fit)
    {
        if (Fit.WindowSeconds == 0 || (fit.Lines > 0 && Fit.Lines > 0 ? PowerOfError(fit) < PowerOfError(Fit) : fit.Disagreement < Fit.Disagreement))
        {
            Take(loaded, fit);
        }
    }

    // One line more may take the pulse, and leave nothing that could disagree.
    private static double PowerOfError(in RatioFit fit) => (fit.Disagreement * fit.Disagreement) + (fit.StandardError * fit.StandardError);

    /// <summary>Takes the window that is loaded.</summary>
    /// <param name="loaded">The window.</param>
    /// <param name="fit">What was told of it.</param>
    public void Take(LoadedWindow loaded, in RatioFit fit)
    {
        Fit = fit;
        loaded.Pairs.CopyTo(Room);
        Edge = loaded.Edge;
        Noise = loaded.Noise;
        AreLinesAdded = loaded.AreLinesAdded;
        loaded.RemovedHz.CopyTo(linesHz);
    }
}
