namespace PulseStream.Course;

/// <summary>
/// The change detector's numbers. With them, by simulation with three values a day of deviation 1, a steady person has a
/// false alarm in fewer than one of 100 days, and a fall of 3 points over 48 hours is found within a day of its end.
/// </summary>
public sealed record ChangeOptions
{
    /// <summary>Half the shift that is found quickest, in deviations.</summary>
    public double Allowance { get; init; } = 0.5;

    /// <summary>Where the sum counts as a change, in deviations (textbook: 465 steady values between alarms, both directions).</summary>
    public double Limit { get; init; } = 5;

    /// <summary>The smallest deviation of a person's values, in points: a steady person must not be alarmed by a single point.</summary>
    public double LeastDeviation { get; init; } = 1;

    /// <summary>How far one value counts, in deviations: a single odd one must not be a change.</summary>
    public double MostOfOneValue { get; init; } = 3.5;

    /// <summary>Values before the first is judged.</summary>
    public int LearningValues { get; init; } = 4;

    /// <summary>How many values the least deviation weighs against a person's own.</summary>
    public double DeviationWeight { get; init; } = 9;

    /// <summary>Values closer together than this are one, in hours: ten checks in an evening are one evening.</summary>
    public double HoursOfOneValue { get; init; } = 3;
}
