namespace PulseStream.Signal;

/// <summary>
/// Room to measure a window in. Nothing in it outlives a second, so the streams of one rate that are read in turn can share
/// one: each then keeps no more than its own last seconds. Two streams that are read at the same time need one each.
/// </summary>
/// <param name="design">Filters and bases of the streams.</param>
public sealed class WindowRoom(SignalDesign design)
{
    // A beat follows another after a fifth of a second at the soonest, and a window lasts eight.
    private const int MostBeats = 40;

    /// <summary>What the streams that share the room are measured with.</summary>
    public SignalDesign Design { get; } = design;

    internal double[] Pairs { get; } = new double[2 * design.LongestWindowBins];

    internal double[] Best { get; } = new double[2 * design.LongestWindowBins];

    internal double[] Curved { get; } = new double[2 * design.LongestWindowBins];

    internal LineRemover Lines { get; } = new(design);

    internal BeatFinder Finder { get; } = new(design);

    internal BeatShape Shape { get; } = new();

    internal StretchedBeats Stretched { get; } = new();

    internal SteadyWave Steady { get; } = new(design);

    internal MotionSeparation Separation { get; } = new(design);

    internal RandomWalk Walk { get; } = new(design);

    internal ChangedBlood Changed { get; } = new(design);

    internal Beat[] Beats { get; } = new Beat[MostBeats];
}
