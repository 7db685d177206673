namespace PulseStream.Sweeps;

/// <summary>A grid of situations, each simulated several times.</summary>
public sealed record SweepGrid
{
    /// <summary>Saturations, percent.</summary>
    public IReadOnlyList<double> Spo2 { get; init; } = [70, 80, 90, 97];

    /// <summary>Perfusions, percent.</summary>
    public IReadOnlyList<double> Perfusion { get; init; } = [0.1, 0.3, 1, 3];

    /// <summary>Pulse rates, beats a minute.</summary>
    public IReadOnlyList<double> Pulse { get; init; } = [40, 75, 140];

    /// <summary>Sizes of a random movement over the pulse, throughout the recording; 0 for none.</summary>
    public IReadOnlyList<double> Motion { get; init; } = [0, 0.3, 1];

    /// <summary>White noise, deviation over the light.</summary>
    public IReadOnlyList<double> Noise { get; init; } = [2e-5, 2e-4];

    /// <summary>Sample rates, Hz.</summary>
    public IReadOnlyList<double> Rate { get; init; } = [100];

    /// <summary>Recordings a cell.</summary>
    public int RunsPerCell { get; init; } = 5;

    /// <summary>Length of a recording.</summary>
    public double Seconds { get; init; } = 45;

    /// <summary>The same seed gives the same sweep.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Every cell, the last coordinate running quickest.</summary>
    public IReadOnlyList<SweepPoint> Points() =>
    [
        .. from spo2 in Spo2
           from perfusion in Perfusion
           from pulse in Pulse
           from motion in Motion
           from noise in Noise
           from rate in Rate
           select new SweepPoint(spo2, perfusion, pulse, motion, noise, rate),
    ];
}
