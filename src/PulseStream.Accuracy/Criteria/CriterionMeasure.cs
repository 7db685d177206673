namespace PulseStream.Accuracy.Criteria;

/// <summary>What a criterion looks at.</summary>
public enum CriterionMeasure
{
    /// <summary>Root mean square error.</summary>
    Arms = 0,

    /// <summary>Size of the mean error, without its sign.</summary>
    Bias,

    /// <summary>Standard deviation of the error.</summary>
    Precision,

    /// <summary>How many pairs.</summary>
    Pairs,

    /// <summary>How many subjects.</summary>
    Subjects,

    /// <summary>How many subjects of the groups that a criterion names.</summary>
    DarkSubjects,

    /// <summary>Upper end of the interval of the largest difference in bias between skin tones.</summary>
    GroupDifference,
}
