using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Statistics;

namespace PulseStream.Accuracy;

/// <summary>All that is said of a device's accuracy from pairs of reading and reference.</summary>
public sealed record AccuracyStatement
{
    /// <summary>What was compared.</summary>
    public required Quantity Quantity { get; init; }

    /// <summary>The pairs.</summary>
    public required IReadOnlyList<PairedReading> Pairs { get; init; }

    /// <summary>Over all pairs.</summary>
    public required Measures All { get; init; }

    /// <summary>95 % interval of the bias; null with one subject.</summary>
    public ConfidenceInterval? BiasInterval { get; init; }

    /// <summary>95 % interval of the precision; null with one subject.</summary>
    public ConfidenceInterval? PrecisionInterval { get; init; }

    /// <summary>95 % interval of A_rms; null with one subject.</summary>
    public ConfidenceInterval? ArmsInterval { get; init; }

    /// <summary>Limits of agreement; null with one subject.</summary>
    public LimitsOfAgreement? Limits { get; init; }

    /// <summary>Error over reference; null where the reference never changes.</summary>
    public ErrorRegression? Regression { get; init; }

    /// <summary>By band of the reference.</summary>
    public required IReadOnlyList<Band> Bands { get; init; }

    /// <summary>By skin tone; empty where none is told.</summary>
    public required IReadOnlyList<SkinGroup> Groups { get; init; }

    /// <summary>The largest difference between skin tones; null where fewer than two are told.</summary>
    public GroupDifference? LargestDifference { get; init; }

    /// <summary>Criteria in force that could be judged.</summary>
    public required IReadOnlyList<JudgedCriterion> Criteria { get; init; }

    /// <summary>Criteria that are told without being in force.</summary>
    public required IReadOnlyList<JudgedCriterion> NotInForce { get; init; }

    /// <summary>What to know before believing it, one sentence or two each.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>Whether every criterion in force is met.</summary>
    public bool IsMet => Criteria.All(criterion => criterion.IsMet);

    /// <summary>States the accuracy that some pairs show.</summary>
    /// <param name="pairs">At least one.</param>
    /// <param name="quantity">What was compared.</param>
    /// <param name="criteria">What it is held against; those of another quantity are left out.</param>
    public static AccuracyStatement Of(IReadOnlyList<PairedReading> pairs, Quantity quantity, IReadOnlyList<Criterion> criteria)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentOutOfRangeException.ThrowIfZero(pairs.Count);
        var own = criteria.Where(criterion => criterion.Quantity == quantity).ToArray();
        var judged = own.Select(criterion => JudgedCriterion.Of(criterion, pairs)).OfType<JudgedCriterion>().ToArray();
        var subjects = SubjectSums.Of(pairs);
        var groups = SkinGroup.Of(pairs);
        return new()
        {
            Quantity = quantity,
            Pairs = pairs,
            All = Measures.Of(pairs),
            BiasInterval = MeanError.Of(subjects).Interval,
            PrecisionInterval = RootInterval.OfPrecision(subjects),
            ArmsInterval = RootInterval.OfArms(subjects),
            Limits = LimitsOfAgreement.Of(pairs),
            Regression = ErrorRegression.Of(pairs, pair => pair.Reference),
            Bands = Band.Of(pairs, QuantityScale.Of(quantity)),
            Groups = groups,
            LargestDifference = GroupDifference.Of(groups),
            Criteria = [.. judged.Where(criterion => criterion.Criterion.InForce)],
            NotInForce = [.. judged.Where(criterion => !criterion.Criterion.InForce)],
            Warnings = [.. StudyWarnings.Of(pairs, quantity, own)],
        };
    }
}
