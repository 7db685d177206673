namespace PulseStream.Accuracy.Criteria;

/// <summary>One demand on a study or a device, with where it comes from.</summary>
public sealed record Criterion
{
    /// <summary>In a few words.</summary>
    public required string Name { get; init; }

    /// <summary>Of which quantity it speaks.</summary>
    public required Quantity Quantity { get; init; }

    /// <summary>What it looks at.</summary>
    public required CriterionMeasure Measure { get; init; }

    /// <summary>Least reference value that counts, itself included.</summary>
    public required double From { get; init; }

    /// <summary>Largest reference value that counts, itself included.</summary>
    public required double To { get; init; }

    /// <summary>The limit.</summary>
    public required double Limit { get; init; }

    /// <summary>Whether the value may be the limit or more; else the limit or less.</summary>
    public required bool IsLeast { get; init; }

    /// <summary>Share of all subjects that the limit is at least, 0 to 1; 0 for none.</summary>
    public double LeastShare { get; init; }

    /// <summary>Groups that count, for <see cref="CriterionMeasure.DarkSubjects"/>.</summary>
    public IReadOnlyList<string> Groups { get; init; } = [];

    /// <summary>Groups that are known not to count; with names in neither list it cannot be judged.</summary>
    public IReadOnlyList<string> OtherGroups { get; init; } = [];

    /// <summary>Sites it speaks of; none for all.</summary>
    public IReadOnlyList<string> Sites { get; init; } = [];

    /// <summary>Whether it decides; otherwise its outcome is only told.</summary>
    public bool InForce { get; init; } = true;

    /// <summary>Standard or guidance, with its place.</summary>
    public required string Source { get; init; }
}
