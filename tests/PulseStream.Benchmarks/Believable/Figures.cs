using PulseStream.Readings;
using PulseStream.Simulation;
using PulseStream.Simulation.Episodes;

namespace PulseStream.Benchmarks.Believable;

/// <summary>What a row of streams came to, against the truth that the simulator knows.</summary>
internal sealed class Figures
{
    // A second speaks of its last eight: where the truth moves, it is right anywhere between that time's lowest and highest.
    private const int WindowSeconds = 8;
    private const int StartSeconds = 15;
    private const int FirstWindowSeconds = 4;
    private readonly List<double> errors = [];
    private readonly List<double> pulseErrors = [];
    private readonly List<double> widths = [];
    private int quiet;
    private int quietUsable;
    private int disturbed;
    private int disturbedUsable;
    private int refused;
    private int namedRight;
    private int held;
    private int wrongBy2;
    private int wrongBy3;
    private int halved;

    public int Readings { get; private set; }

    public int FirstReadingSecond { get; private set; }

    public double UsablePercent => Percent(quietUsable, quiet);

    public double GivenPercent => Percent(disturbedUsable, disturbed);

    public double NamedRightPercent => Percent(namedRight, refused);

    public double HoldsPercent => Percent(held, errors.Count);

    public double Bias => errors.Count > 0 ? errors.Average() : double.NaN;

    public double Error95 => Quantile(errors.Select(Math.Abs), 0.95);

    public double Worst => Quantile(errors.Select(Math.Abs), 1);

    public double PulseError95 => Quantile(pulseErrors.Select(Math.Abs), 0.95);

    public double Width => Quantile(widths, 0.5);

    public int WrongBy2 => wrongBy2;

    public int WrongBy3 => wrongBy3;

    public int Halved => halved;

    /// <summary>Adds a stream: what was told of it and what was true.</summary>
    public void Add(Scenario scenario, IReadOnlyList<Second> seconds, IReadOnlyList<Reading> readings)
    {
        var recording = new SimulatedRecording(scenario);
        var truth = recording.Truth().ToArray();
        var beats = recording.Beats().Select(b => b.Seconds).ToArray();
        foreach (var second in seconds)
        {
            Count(truth, (int)second.SecondIndex, second);
            if (second.Usable is { } usable)
            {
                Compare(truth, beats, (int)second.SecondIndex, usable);
            }
        }

        foreach (var reading in readings)
        {
            var off = Math.Abs(ErrorOf(truth, (int)reading.SecondIndex, reading.Spo2.Percent));
            wrongBy2 += off > 2 ? 1 : 0;
            wrongBy3 += off > 3 || double.IsNaN(off) ? 1 : 0;
        }

        Readings += readings.Count;
        FirstReadingSecond = Math.Max(FirstReadingSecond, readings.Count > 0 ? (int)readings[0].SecondIndex : int.MaxValue);
    }

    private void Count(TruthSecond[] truth, int at, Second second)
    {
        var isUsable = second.IsUsable;
        if (Cause(truth[at]) is { } cause)
        {
            // A finger's first seconds are refused with or without a disturbance; without one, none may be given.
            if (at >= StartSeconds || truth[at].Finger != FingerPlacement.On)
            {
                disturbed++;
                disturbedUsable += isUsable ? 1 : 0;
            }

            if (second.Unusable is { } unusable && at >= FirstWindowSeconds)
            {
                refused++;
                namedRight += (unusable.Reasons & cause) != Reasons.None ? 1 : 0;
            }
        }
        else if (at >= StartSeconds && truth.Skip(at - WindowSeconds).Take(WindowSeconds).All(s => Cause(s) is null))
        {
            quiet++;
            quietUsable += isUsable ? 1 : 0;
        }
    }

    private void Compare(TruthSecond[] truth, double[] beats, int at, UsableSecond second)
    {
        if (second.Spo2 is { } spo2)
        {
            var error = ErrorOf(truth, at, spo2.Percent);
            errors.Add(double.IsNaN(error) ? 100 : error);
            held += spo2.LowPercent <= spo2.Percent - error && spo2.Percent - error <= spo2.HighPercent ? 1 : 0;
            widths.Add(spo2.HighPercent - spo2.LowPercent);
        }

        // Beats are not counted while nothing living is in the clip.
        var isCounted = truth.Skip(at + 1 - WindowSeconds).Take(WindowSeconds).All(s => double.IsFinite(s.PulsePerMinute));
        if (isCounted && second.PulseRatePerMinute is { } pulse && RateOver(beats, at + 1 - WindowSeconds, at + 1) is { } rate)
        {
            pulseErrors.Add(pulse - rate);
            halved += pulse < 0.67 * rate || pulse > 1.5 * rate ? 1 : 0;
        }
    }

    private static Reasons? Cause(TruthSecond truth) => truth switch
    {
        { Finger: FingerPlacement.Off } => Reasons.NoFinger,
        { Finger: not FingerPlacement.On } => Reasons.Misplaced | Reasons.Motion,
        { Disturbances: var d } when d.HasFlag(Disturbances.Motion) => Reasons.Motion,
        { Disturbances: var d } when d.HasFlag(Disturbances.Venous) => Reasons.Misplaced | Reasons.Motion,
        { Disturbances: var d } when d.HasFlag(Disturbances.TooBright) => Reasons.Saturated,
        { Disturbances: var d } when d.HasFlag(Disturbances.Flicker) || d.HasFlag(Disturbances.Ambient) => Reasons.AmbientLight,
        _ => null,
    };

    private static double ErrorOf(TruthSecond[] truth, int at, double percent)
    {
        var window = truth.Skip(Math.Max(0, at + 1 - WindowSeconds)).Take(Math.Min(WindowSeconds, at + 1)).Select(s => s.Spo2Percent).ToArray();
        return double.IsNaN(window[^1]) ? double.NaN : percent - Math.Clamp(percent, window.Where(double.IsFinite).Min(), window.Where(double.IsFinite).Max());
    }

    // Beats between two times, in between counted by the share of their interval.
    private static double? RateOver(double[] beats, double from, double to)
    {
        if (beats.Length < 3 || from < beats[0] || to > beats[^1])
        {
            return null;
        }

        return 60 * (PlaceOf(beats, to) - PlaceOf(beats, from)) / (to - from);
    }

    private static double PlaceOf(double[] beats, double time)
    {
        var after = Array.FindIndex(beats, b => b >= time);
        return after == 0 ? 0 : after - ((beats[after] - time) / (beats[after] - beats[after - 1]));
    }

    private static double Percent(int part, int whole) => whole > 0 ? 100.0 * part / whole : double.NaN;

    private static double Quantile(IEnumerable<double> values, double share)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length > 0 ? sorted[(int)Math.Ceiling(share * (sorted.Length - 1))] : double.NaN;
    }
}
