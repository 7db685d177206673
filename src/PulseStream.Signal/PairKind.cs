namespace PulseStream.Signal;

/// <summary>What comes behind each front of a window in turn.</summary>
internal enum PairKind
{
    /// <summary>Nothing that comes each time.</summary>
    None,

    /// <summary>The second wave of the same beat.</summary>
    SecondWave,

    /// <summary>A beat of its own, early and weak: bigeminy.</summary>
    EarlyBeat,

    /// <summary>One of both; nobody can tell which.</summary>
    Either,
}
