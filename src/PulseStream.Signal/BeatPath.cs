namespace PulseStream.Signal;

/// <summary>The beats of a known heart in a movement: of all rows of beats that keep about its pace, the likeliest.</summary>
/// <remarks>Source: the best path through a row of places (A. J. Viterbi, IEEE Trans Inf Theory 1967;13:260, from memory), for each of some paces.</remarks>
internal sealed class BeatPath
{
    private const int MostBeats = 64;

    // Seldom does an interval differ by more from those around it.
    private const double FurthestDeviations = 3;

    // Paces are tried that are less than an interval's spread from each other, as far as two deviations of what a heart changes in a minute.
    private const int TrialsEachWay = 5;
    private const double TrialStep = 0.04;
    private readonly SignalOptions options;
    private readonly BeatGain gain;
    private readonly double[] totals;
    private readonly int[] formers;
    private readonly double[] penalties;
    private readonly double[] rises = new double[MostBeats];

    public BeatPath(SignalDesign design)
    {
        options = design.Options;
        gain = new(design);
        totals = new double[design.LongestWindowBins + PulseTemplate.LongestBeatBins(design)];
        formers = new int[totals.Length];
        penalties = new double[2 * PulseTemplate.LongestBeatBins(design)];
    }

    /// <summary>How many beats were found.</summary>
    public int Count { get; private set; }

    /// <summary>Places of their steepest rises, bins from the window's start.</summary>
    public ReadOnlySpan<double> Rises => rises.AsSpan(0, Count);

    /// <summary>Logarithm of how much likelier the window is by each of these beats, on the mean.</summary>
    public double Likelihood { get; private set; }

    /// <summary>Finds the beats of a window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="movement">Its movement.</param>
    /// <param name="calm">The calm pulse.</param>
    /// <param name="ratio">R of the pulse.</param>
    public void Find(ReadOnlySpan<double> pairs, MovementModel movement, PulseTemplate calm, double ratio)
    {
        gain.Measure(pairs, movement, calm, ratio, Shortest(calm.PeriodBins * Math.Exp(-TrialStep * TrialsEachWay)));
        var best = double.NegativeInfinity;
        Count = 0;
        for (var trial = -TrialsEachWay; trial <= TrialsEachWay; trial++)
        {
            var change = TrialStep * trial;
            var shortest = Walk(calm.PeriodBins * Math.Exp(change));
            var deviations = change / options.PaceSpread;
            for (var place = Math.Max(0, gain.Places - shortest); place < gain.Places; place++)
            {
                var total = totals[place] + gain.Of(place) - (0.5 * deviations * deviations);
                if (total > best)
                {
                    best = total;
                    Take(place, calm.BeforeBins);
                }
            }
        }

        Likelihood = Count > 0 ? best / Count : double.NegativeInfinity;
    }

    // Leaves for each place what the best row of beats before it is worth, and where the last of them is; returns the shortest interval, bins.
    private int Walk(double periodBins)
    {
        var shortest = Shortest(periodBins);
        var longest = Math.Min((int)Math.Ceiling(periodBins * periodBins / shortest), penalties.Length - 1);
        for (var interval = shortest; interval <= longest; interval++)
        {
            var deviations = Math.Log(interval / periodBins) / options.IntervalSpread;
            penalties[interval] = 0.5 * deviations * deviations;
        }

        for (var place = 0; place < gain.Places; place++)
        {
            totals[place] = 0;
            formers[place] = -1;
            if (place >= longest)
            {
                (totals[place], formers[place]) = BestFormer(place, shortest, longest);
            }
        }

        return shortest;
    }

    private (double Total, int Place) BestFormer(int place, int shortest, int longest)
    {
        var best = double.NegativeInfinity;
        var former = -1;
        for (var interval = shortest; interval <= longest; interval++)
        {
            var total = totals[place - interval] + gain.Of(place - interval, interval) - penalties[interval];
            if (total > best)
            {
                best = total;
                former = place - interval;
            }
        }

        return (best, former);
    }

    private void Take(int last, int beforeBins)
    {
        Count = 0;
        for (var place = last; place >= 0 && Count < MostBeats; place = formers[place])
        {
            rises[Count++] = gain.FirstBin + TopNear(place) + beforeBins;
        }

        rises.AsSpan(0, Count).Reverse();
    }

    private int Shortest(double periodBins) => (int)(periodBins * Math.Exp(-FurthestDeviations * options.IntervalSpread));

    // A path may keep off a top for the sake of its pace.
    private double TopNear(int place)
    {
        if (place == 0 || place + 1 >= gain.Places)
        {
            return place;
        }

        ReadOnlySpan<double> near = [gain.Of(place - 1), gain.Of(place), gain.Of(place + 1)];
        return place - 1 + Math.Clamp(Parabola.TopNear(near, 1), 0, 2);
    }
}
