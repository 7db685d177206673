namespace PulseStream.Triage;

/// <summary>How the person feels, from the least to the most worrying after <see cref="NotAsked"/>.</summary>
public enum Feeling
{
    /// <summary>Nobody asked: not the same as well, and the advice asks.</summary>
    NotAsked = 0,

    /// <summary>Well.</summary>
    Well,

    /// <summary>Fever, breathless on effort, or worse than yesterday.</summary>
    Poorly,

    /// <summary>Hard to breathe at rest.</summary>
    Breathless,

    /// <summary>Gravely ill, confused, blue, chest pain, or cannot be woken.</summary>
    Severe,
}
