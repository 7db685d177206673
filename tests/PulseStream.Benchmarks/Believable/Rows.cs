using PulseStream.Simulation;
using PulseStream.Simulation.Blood;
using PulseStream.Simulation.Episodes;
using PulseStream.Simulation.Tracks;

namespace PulseStream.Benchmarks.Believable;

/// <summary>The kinds of streams of the report. All of them are made up.</summary>
internal static class Rows
{
    private static readonly double[] Rates = [25, 50, 60, 100, 125, 200, 250, 500];

    public static StreamRow Quiet { get; } = new("quiet finger", QuietFinger);

    public static StreamRow Slow { get; } = new("slow pulse, 35 to 45", r => QuietFinger(r) with { Pulse = Track.Constant(Between(r, 35, 45)) });

    public static StreamRow Drifting { get; } = new("slow pulse beside drift", r => QuietFinger(r) with { Pulse = Track.Constant(Between(r, 35, 45)), Episodes = Drift(r) });

    public static StreamRow Low { get; } = new("perfusion 0.25 %, breathing larger than the pulse", r => WeakFinger(r, 0.25));

    public static StreamRow Lowest { get; } = new("perfusion 0.1 %", r => WeakFinger(r, 0.1));

    public static StreamRow Irregular { get; } = new("irregular rhythm", r => QuietFinger(r) with
    {
        Rhythm = Rhythm.Irregular,
        Pulse = Track.Constant(Between(r, 55, 120)),
        IrregularityPercent = Between(r, 20, 40),
    });

    public static StreamRow IrregularWaves { get; } = new("irregular rhythm, second waves nearly as high as the first", r => QuietFinger(r) with
    {
        Rhythm = Rhythm.Irregular,
        Pulse = Track.Constant(Between(r, 45, 110)),
        IrregularityPercent = Between(r, 20, 40),
        SecondWave = Between(r, 0.7, 0.9),
    });

    public static StreamRow MildMotion { get; } = new("movement up to the pulse's size, from 20 s on", r => Moved(r, Between(r, 0.3, 1)));

    public static StreamRow StrongMotion { get; } = new("movement 1 to 20 times the pulse, from 20 s on", r => Moved(r, Math.Exp(Between(r, 0, 3))));

    public static StreamRow ShortMotion { get; } = new("movement of 5 s, then still", r =>
    {
        var moved = Moved(r, Math.Exp(Between(r, 0, 3)));
        return moved with { Episodes = [(MotionEpisode)moved.Episodes[0] with { FromSeconds = 20, ToSeconds = 25 }] };
    });

    public static StreamRow Off { get; } = new("finger off", r => QuietFinger(r) with { Episodes = [new FingerOffEpisode(20, 40, r.Next(2) == 0 ? 0.03 : 1.7)] });

    public static StreamRow HalfOff { get; } = new("finger half off", r => QuietFinger(r) with { Episodes = [new HalfOffEpisode(20, 45, Between(r, 0.15, 0.6), Between(r, 0.15, 0.9))] });

    public static StreamRow Slipping { get; } = new("finger slipping", r => QuietFinger(r) with { Episodes = [new SlipEpisode(20, 50, Between(r, 0.3, 0.7), Between(r, 0.3, 1))] });

    public static StreamRow Lifeless { get; } = new("something lifeless", r => QuietFinger(r) with { Episodes = [new LifelessEpisode(0, 60, Between(r, 0.4, 1.2), Between(r, 0.4, 1.2), Between(r, 0.01, 1))] });

    public static StreamRow Venous { get; } = new("venous pulsing", r => QuietFinger(r) with { Episodes = [new VenousEpisode(20, 45, Between(r, 0.3, 1.5), Between(r, 1.2, 2), Between(r, 0.05, 0.4))] });

    public static StreamRow Clipping { get; } = new("clipping", r => QuietFinger(r) with { Episodes = [new ClipEpisode(20, 40, Between(r, 2, 4))] });

    public static StreamRow Flicker { get; } = new("flicker on the pulse's second harmonic, half its size", Flickering);

    public static StreamRow LightStep { get; } = new("light switched on", r => QuietFinger(r) with { Episodes = [new AmbientEpisode(20, 40, Between(r, 3, 40))] });

    public static StreamRow Missing { get; } = new("20 % of samples missing, 2 % off the rate", r => QuietFinger(r) with { MissingShare = 0.2, RateOffPercent = Between(r, -2, 2) });

    public static StreamRow Gaps { get; } = new("a gap of one to two seconds every twelve", r =>
        QuietFinger(r) with { Episodes = [.. new[] { 20, 32, 44, 56 }.Select(from => new GapEpisode(from, from + Between(r, 1.1, 1.9)))] });

    public static StreamRow Falling { get; } = new("saturation steps and falls", r => QuietFinger(r) with
    {
        Spo2 = r.Next(2) == 0 ? Track.Step(Between(r, 94, 99), Between(r, 80, 92), 30) : Track.Ramp(97, 85, 25, 25 + Between(r, 12, 30)),
        Perfusion = Track.Constant(Between(r, 1, 4)),
    });

    public static StreamRow PulseSteps { get; } = new("pulse from 60 to 130", r => QuietFinger(r) with { Pulse = Track.Step(60, 130, 30), SecondWave = 0.2 });

    public static StreamRow Ectopic { get; } = new("early beats, bigeminy", r => QuietFinger(r) with { Pulse = Track.Constant(Between(r, 55, 100)), Rhythm = r.Next(2) == 0 ? Rhythm.Ectopic : Rhythm.Bigeminy });

    public static StreamRow Warming { get; } = new("cold finger warming", r => QuietFinger(r) with { Perfusion = Track.Ramp(0.3, 3, 10, 50) });

    public static IReadOnlyList<StreamRow> All { get; } =
    [
        Quiet, Slow, Drifting, Low, Lowest, Irregular, IrregularWaves, MildMotion, StrongMotion, ShortMotion, Off, HalfOff, Slipping, Lifeless, Venous, Clipping, Flicker, LightStep,
        Missing, Gaps, Falling, PulseSteps, Ectopic, Warming,
    ];

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    private static Scenario QuietFinger(Random r)
    {
        var pulse = Math.Exp(Between(r, Math.Log(35), Math.Log(200)));
        return new()
        {
            DurationSeconds = 60,
            RateHz = Rates[r.Next(Rates.Length)],
            Bits = r.Next(16, 23),
            Spo2 = Track.Constant(Between(r, 70, 100)),
            Pulse = Track.Constant(pulse),
            Perfusion = Track.Constant(Math.Exp(Between(r, Math.Log(0.5), Math.Log(6)))),
            Rhythm = r.Next(2) == 0 ? Rhythm.Regular : Rhythm.Respiratory,
            SecondWave = Between(r, 0, 0.7),
            RespirationPercent = Between(r, 0.05, 0.8),
            RespirationPerMinute = Between(r, 9, 20),
            BaselinePercent = Between(r, 0.1, 2),
            Noise = Math.Exp(Between(r, Math.Log(5e-6), Math.Log(1e-4))),
        };
    }

    private static Scenario WeakFinger(Random r, double perfusion) => QuietFinger(r) with
    {
        Pulse = Track.Constant(Between(r, 45, 140)),
        Perfusion = Track.Constant(perfusion),
        RespirationPercent = perfusion * Between(r, 1, 4),
    };

    // Four kinds in turn; what red knows that infrared does not is at most a tenth.
    private static Scenario Moved(Random r, double size)
    {
        var kind = r.Next(4);
        var motion = new MotionEpisode(
            20,
            60,
            kind switch { 1 => MotionKind.Rhythmic, 2 => MotionKind.Pulse, _ => MotionKind.Broadband },
            size,
            Between(r, 0.8, 4),
            Between(r, 0.3, 1.5),
            Between(r, 0, 0.1),
            kind == 3 ? LightChannels.Infrared : LightChannels.Both);
        return QuietFinger(r) with { Pulse = Track.Constant(Between(r, 45, 150)), Perfusion = Track.Constant(Math.Min(Between(r, 0.6, 4), 30 / size)), Episodes = [motion] };
    }

    // What vessels drift by falls with the square of its frequency, and some of it lies under a slow pulse's first wave.
    private static List<Episode> Drift(Random r)
    {
        const int waves = 3;
        var (size, slowestHz, ratio) = (Between(r, 0.05, 0.2), Between(r, 0.25, 0.4), Between(r, 0.8, 1.6));
        var drift = new List<Episode>();
        for (var wave = 0; wave < waves; wave++)
        {
            var times = 1 + (0.37 * wave);
            drift.Add(new MotionEpisode(double.NegativeInfinity, double.PositiveInfinity, MotionKind.Rhythmic, size / (times * times), slowestHz * times, ratio, 0));
        }

        return drift;
    }

    private static Scenario Flickering(Random r)
    {
        var finger = QuietFinger(r) with { RateHz = 100, Pulse = Track.Constant(Between(r, 50, 140)), Rhythm = Rhythm.Regular };
        var alias = 2 * finger.Pulse.At(0) / 60;
        return finger with { Episodes = [new FlickerEpisode(double.NegativeInfinity, double.PositiveInfinity, 100 + alias, finger.Perfusion.At(0) / 2)] };
    }
}
