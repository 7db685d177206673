using PulseStream.Simulation.Chance;

namespace PulseStream.Simulation.Blood;

/// <summary>Makes one beat after another in the rhythm of the scenario.</summary>
internal sealed class Heart(Scenario scenario)
{
    private const double SecondsInMinute = 60;

    // Swing of the interval with respiration; common practice for a resting adult.
    private const double RespiratoryDepth = 0.08;

    // An early beat: its time and height over the ordinary ones; the heart has filled for less time. Common practice.
    private const double EctopicInterval = 0.6;
    private const double EctopicHeight = 0.45;
    private const double EctopicShare = 1 / 8.0;
    private const double BigeminyInterval = 0.7;
    private const double BigeminyHeight = 0.6;

    // A beat's height and second wave vary more than its interval.
    private const double HeightVariation = 2;
    private const double SecondWaveVariation = 5;

    // An interval keeps at least this share of the mean, whatever chance says.
    private const double ShortestInterval = 0.3;

    // By the recording's start the second wave of the first beat has passed.
    private const double LeadInBeats = 4;

    private readonly SplitMix _interval = new(scenario.Seed, Streams.Interval);
    private readonly SplitMix _height = new(scenario.Seed, Streams.Height);
    private readonly SplitMix _secondWave = new(scenario.Seed, Streams.SecondWave);
    private readonly SplitMix _rhythm = new(scenario.Seed, Streams.Rhythm);
    private readonly double _variation = scenario.BeatVariationPercent / 100;
    private double _nextOnset = -LeadInBeats * SecondsInMinute / scenario.Pulse.At(0);
    private long _number;
    private bool _isEarly;

    /// <summary>The next beat; the first ones lie before the recording's start.</summary>
    public PulseWave NextBeat()
    {
        var onsetSeconds = _nextOnset;
        var mean = SecondsInMinute / scenario.Pulse.At(onsetSeconds);
        var wasEarly = _isEarly;
        _isEarly = !wasEarly && NextIsEarly();
        var stretch = Stretch(onsetSeconds, wasEarly) + (_variation * _interval.Bell(_number));
        var height = (wasEarly ? EarlyHeight : 1) * (1 + (HeightVariation * _variation * _height.Bell(_number)));
        var secondWave = scenario.SecondWave * Math.Max(0, 1 + (SecondWaveVariation * _variation * _secondWave.Bell(_number)));
        var interval = mean * Math.Max(ShortestInterval, stretch);
        _number++;
        _nextOnset += interval;
        return new PulseWave(onsetSeconds, interval, mean, height, secondWave);
    }

    private double EarlyHeight => scenario.Rhythm == Rhythm.Bigeminy ? BigeminyHeight : EctopicHeight;

    private bool NextIsEarly() => scenario.Rhythm switch
    {
        Rhythm.Ectopic => _rhythm.Uniform(_number) < EctopicShare,
        Rhythm.Bigeminy => true,
        _ => false,
    };

    private double Stretch(double seconds, bool wasEarly) => scenario.Rhythm switch
    {
        Rhythm.Respiratory => 1 - (RespiratoryDepth * Math.Sin(Math.Tau * scenario.RespirationPerMinute / SecondsInMinute * seconds)),
        Rhythm.Irregular => 1 + (scenario.IrregularityPercent / 100 * _rhythm.Signed(_number)),
        Rhythm.Ectopic => Early(wasEarly, EctopicInterval),
        Rhythm.Bigeminy => Early(wasEarly, BigeminyInterval),
        _ => 1,
    };

    private double Early(bool wasEarly, double interval) => _isEarly ? interval : wasEarly ? 2 - interval : 1;
}
