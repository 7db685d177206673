namespace PulseStream.Simulation.Blood;

/// <summary>When each beat of a scenario rises most steeply, found on the summed volume itself.</summary>
internal static class BeatTimes
{
    // Steepest rise of the first bell alone lies one width before its top; neighbours and second wave move it by less than the search.
    private const double RisePhase = PulseShape.FirstCentre - PulseShape.FirstWidth;
    private const double RiseSearch = 0.06;

    // 0.12 of a beat shrunk forty times by the golden section: below a nanosecond.
    private const double Golden = 0.6180339887498949;
    private const int Rounds = 40;

    /// <summary>The beats in order without end, those of the seconds before the start included, in the scenario's time.</summary>
    public static IEnumerable<TrueBeat> Of(Scenario scenario)
    {
        var heart = new Heart(scenario);
        var waves = new List<PulseWave>();
        var last = double.NaN;
        while (true)
        {
            var wave = heart.NextBeat();
            waves.RemoveAll(w => w.EndSeconds < wave.StartSeconds);
            waves.Add(wave);
            var rise = SteepestRise(wave, waves);
            yield return new TrueBeat(rise, rise - last);
            last = rise;
        }
    }

    // The rise has one top within the search, and the next beat cannot reach back that far.
    private static double SteepestRise(in PulseWave wave, List<PulseWave> waves)
    {
        var low = wave.OnsetSeconds + ((RisePhase - RiseSearch) * wave.ScaleSeconds);
        var high = wave.OnsetSeconds + ((RisePhase + RiseSearch) * wave.ScaleSeconds);
        for (var i = 0; i < Rounds; i++)
        {
            var left = high - (Golden * (high - low));
            var right = low + (Golden * (high - low));
            (low, high) = RiseAt(left, waves) > RiseAt(right, waves) ? (low, right) : (left, high);
        }

        return (low + high) / 2;
    }

    private static double RiseAt(double seconds, List<PulseWave> waves) => waves.Sum(w => w.RiseAt(seconds));
}
