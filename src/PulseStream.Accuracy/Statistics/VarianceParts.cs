namespace PulseStream.Accuracy.Statistics;

/// <summary>Scatter within subjects and of subjects against each other, told apart by a one-way analysis of variance.</summary>
/// <remarks>J. M. Bland, D. G. Altman, J Biopharm Stat 2007;17:571-582, section 3.</remarks>
/// <param name="Within">Variance of the error within a subject; null where no subject has two pairs.</param>
/// <param name="Between">Variance of subjects' own biases; null likewise.</param>
/// <param name="Total">Of the error of one reading of any subject.</param>
/// <param name="OfTotal">Variance of the total, for errors that are normally distributed.</param>
internal readonly record struct VarianceParts(double? Within, double? Between, double Total, double OfTotal)
{
    /// <summary>The parts of a study of two or more subjects.</summary>
    public static VarianceParts Of(ReadOnlySpan<SubjectSums> subjects)
    {
        var all = SubjectSums.Total(subjects);
        var (amongSquares, withinSquares, countSquares) = (0.0, 0.0, 0.0);
        foreach (var subject in subjects)
        {
            amongSquares += subject.Count * Math.Pow((subject.Sum / subject.Count) - (all.Sum / all.Count), 2);
            withinSquares += Math.Max(0, subject.SquareSum - (subject.Sum * subject.Sum / subject.Count));
            countSquares += subject.Count * subject.Count;
        }

        var among = amongSquares / (subjects.Length - 1);
        var spare = all.Count - subjects.Length;
        if (spare < 1)
        {
            return new(null, null, among, 2 * among * among / (subjects.Length - 1));
        }

        var within = withinSquares / spare;
        var size = ((all.Count * all.Count) - countSquares) / ((subjects.Length - 1) * all.Count);
        var between = Math.Max(0, (among - within) / size);
        var ofWithin = 2 * within * within / spare;
        return between > 0
            ? new(within, between, between + within, (2 * Math.Pow(among / size, 2) / (subjects.Length - 1)) + (Math.Pow(1 - (1 / size), 2) * ofWithin))
            : new(within, 0, within, ofWithin);
    }
}
