using PulseStream.Samples;
using PulseStream.Simulation.Blood;
using PulseStream.Simulation.Episodes;
using PulseStream.Simulation.Tracks;

namespace PulseStream.Simulation;

/// <summary>
/// What a made-up recording is made of; the defaults are a quiet warm finger. Each property is an option of `simulate`,
/// named in its documentation, and refuses a value outside its limits.
/// </summary>
/// <exception cref="BadInputException">Thrown where a property is set to a value outside its limits.</exception>
public sealed record Scenario
{
    private const double DefaultRateHz = 100;

    /// <summary>`--seconds`: length, 1 to 1,000,000 s.</summary>
    public double DurationSeconds { get; init => field = OptionCheck.Within("--seconds", value, 1, 1e6); } = 60;

    /// <summary>`--rate`: sample rate as the recording states it, 25 to 1000 Hz; 100 unless told.</summary>
    public double RateHz
    {
        get => Rate.Hz;
        init => Rate = new SampleRate(OptionCheck.Within("--rate", value, SampleRate.LowestHz, SampleRate.HighestHz));
    }

    /// <summary>`--rate-off`: by how much the true rate exceeds the stated one, −10 to 10 %.</summary>
    public double RateOffPercent { get; init => field = OptionCheck.Within("--rate-off", value, -10, 10); }

    /// <summary>`--seed`: the same seed gives the same recording.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>`--bits`: of the converter, 8 to 24.</summary>
    public int Bits { get; init => field = OptionCheck.Within("--bits", value, 8, 24); } = 18;

    /// <summary>`--spo2`: arterial saturation over time, 50 to 100 %.</summary>
    public Track Spo2 { get; init => field = OptionCheck.Within("--spo2", value, 50, 100); } = Track.Constant(97);

    /// <summary>`--pulse`: pulse rate over time, 20 to 300 /min; a beat takes the rate of its start.</summary>
    public Track Pulse { get; init => field = OptionCheck.Within("--pulse", value, 20, 300); } = Track.Constant(72);

    /// <summary>`--perfusion`: infrared, peak to trough of an ordinary beat over the mean, 0 to 20 %; 0 is a finger without a pulse.</summary>
    public Track Perfusion { get; init => field = OptionCheck.Within("--perfusion", value, 0, 20); } = Track.Constant(2);

    /// <summary>`--rhythm`: how the beats are spaced.</summary>
    public Rhythm Rhythm { get; init; }

    /// <summary>`--irregularity`: half width of the interval's spread in an irregular rhythm, 0 to 60 % of the mean.</summary>
    public double IrregularityPercent { get; init => field = OptionCheck.Within("--irregularity", value, 0, 60); } = 25;

    /// <summary>`--beat-variation`: deviation of the interval, beat by beat, 0 to 5 %; height varies twice, the second wave five times as much.</summary>
    public double BeatVariationPercent { get; init => field = OptionCheck.Within("--beat-variation", value, 0, 5); } = 1;

    /// <summary>`--second-wave`: height of the second wave over the first, 0 to 0.9; from about 0.4 on with a notch between them.</summary>
    public double SecondWave { get; init => field = OptionCheck.Within("--second-wave", value, 0, 0.9); } = 0.2;

    /// <summary>`--respiration`: infrared, peak to trough, 0 to 5 % of the light.</summary>
    public double RespirationPercent { get; init => field = OptionCheck.Within("--respiration", value, 0, 5); } = 0.2;

    /// <summary>`--respiration-rate`: 4 to 60 /min.</summary>
    public double RespirationPerMinute { get; init => field = OptionCheck.Within("--respiration-rate", value, 4, 60); } = 15;

    /// <summary>`--baseline`: slow course of the light, peak to trough about, 0 to 20 %.</summary>
    public double BaselinePercent { get; init => field = OptionCheck.Within("--baseline", value, 0, 20); } = 0.5;

    /// <summary>`--noise`: deviation of the white noise, 0 to 0.01 of the light, own to each channel.</summary>
    public double Noise { get; init => field = OptionCheck.Within("--noise", value, 0, 0.01); } = 2e-5;

    /// <summary>`--extinction`: how saturation becomes R: the textbook line, or tabulated extinctions.</summary>
    public RatioModel Ratio { get; init; } = RatioModel.Line;

    /// <summary>`--episode`, repeatable: what happens for a while. Their order decides which chance each draws.</summary>
    public IReadOnlyList<Episode> Episodes { get; init; } = [];

    /// <summary>`--ambient`: writes a column with the light while the emitters are dark.</summary>
    public bool WithAmbientColumn { get; init; }

    /// <summary>`--acceleration`: writes three columns of acceleration that follow the motion.</summary>
    public bool WithAcceleration { get; init; }

    /// <summary>`--missing`: share of samples lost one by one at random, 0 to 0.9.</summary>
    public double MissingShare { get; init => field = OptionCheck.Within("--missing", value, 0, 0.9); }

    /// <summary>`--repeats`: share of rows written twice, 0 to 1.</summary>
    public double RepeatShare { get; init => field = OptionCheck.Within("--repeats", value, 0, 1); }

    /// <summary>`--counter-bits`: width at which the written sample counter wraps, 8 to 62 bits.</summary>
    public int CounterBits { get; init => field = OptionCheck.Within("--counter-bits", value, 8, 62); } = 62;

    /// <summary>Sample rate as the recording states it.</summary>
    public SampleRate Rate { get; private init; } = new(DefaultRateHz);

    /// <summary>Samples that the recording would have if none were missing.</summary>
    public long SampleCount => Rate.FirstIndexOf((long)DurationSeconds)
        + (long)Math.Round((DurationSeconds - Math.Floor(DurationSeconds)) * RateHz);

    /// <summary>True time of a sample, in seconds.</summary>
    /// <param name="index">Sample index since the start.</param>
    public double SecondsAt(double index) => Rate.SecondsAt(index) / TrueOverStated;

    internal double TrueOverStated => 1 + (RateOffPercent / 100);
}
