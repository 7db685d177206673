using PulseStream.Readings;
using PulseStream.Signal;

namespace PulseStream.Benchmarks.Believable;

/// <summary>Every method that earns its place, each switched off by one setting.</summary>
internal static class Methods
{
    private const double Never = double.MaxValue;

    public static IReadOnlyList<Method> All { get; } =
    [
        Signal("slow part taken away up to 0.5 Hz instead of 0.2 Hz", s => s with { SlowestPulseHz = 0.2, SlowestFastPulseHz = 0.2 }, Rows.Low, "SpO2 error, 95th percentile", f => f.Error95),
        Signal("smoothing at 8 Hz instead of 20 Hz", s => s with { FastestPulseHarmonicHz = 20 }, Rows.Lowest, "SpO2 error, 95th percentile", f => f.Error95),
        Signal("shorter windows where the lights disagree", s => s with { ShortestWindowSeconds = s.LongestWindowSeconds }, Rows.Falling, "usable %", f => f.UsablePercent),
        Signal("one R before a change of blood and another behind it", s => s with { ChangedDisagreement = -1 }, Rows.Falling, "usable %", f => f.UsablePercent),
        Signal("a slow pulse's beats seen whole", s => s with { SlowPulsePerMinute = 0 }, Rows.Slow, "usable %", f => f.UsablePercent),
        Signal("R off the curvature", s => s with { CurvatureShare = 0 }, Rows.Drifting, "given %", f => f.GivenPercent),
        Signal("gaps bridged", s => s with { BridgedGapSeconds = 0 }, Rows.Missing, "usable %", f => f.UsablePercent),
        Signal("gaps bridged for two seconds instead of one", s => s with { BridgedGapSeconds = 1 }, Rows.Gaps, "usable %", f => f.UsablePercent),
        Signal("steady lines removed", s => s with { LineShare = Never }, Rows.Flicker, "usable %", f => f.GivenPercent),
        Signal("pulse told from movement", s => s with { LargestOtherHeight = -Never }, Rows.MildMotion, "given %", f => f.GivenPercent),
        Judge("agreement of the lights", j => j with { LargestDisagreement = Never, UnprovenDisagreement = Never }, Rows.Venous, "worst second, points", f => f.Worst),
        Judge("growth of the pulse", j => j with { LargestGrowth = Never }, Rows.Off, "worst second, points", f => f.Worst),
        Judge("leaking light", j => j with { LeakRise = Never }, Rows.HalfOff, "seconds given of a finger half off, %", f => f.GivenPercent),
        Judge("weighed against the last calm second", j => j with { BloodWander = 1 }, Rows.StrongMotion, "given %", f => f.GivenPercent),
        Judge("R and the lights together", j => j with { LeakExplains = 0 }, Rows.Slipping, "interval holds %", f => f.HoldsPercent),
        Judge("lines on the pulse's harmonics", j => j with { HarmonicDistance = 0 }, Rows.MildMotion, "given %", f => f.GivenPercent),
        Judge("small jumps beside movement and lines", j => j with { SeparatedJump = Never, LargestSeparatedJump = Never, LargestSeparatedDrift = Never }, Rows.StrongMotion, "worst second, points", f => f.Worst),
        Judge("fronts of the beats", j => j with { Form = j.Form with { LeastFrontSteepness = double.MinValue }, ShapeWeight = 0 }, Rows.Lifeless, "seconds given of a lifeless thing, %", f => f.GivenPercent),
        Judge("beats alike", j => j with { LeastLikeness = -9, LeastLikenessWithoutRhythm = -9, LeastUnprovenLikeness = -9 }, Rows.Lifeless, "seconds given of a lifeless thing, %", f => f.GivenPercent),
    ];

    private static Method Signal(string name, Func<SignalOptions, SignalOptions> without, StreamRow row, string figure, Func<Figures, double> read) =>
        new(name, o => o with { Signal = without(o.Signal) }, row, figure, read);

    private static Method Judge(string name, Func<JudgeOptions, JudgeOptions> without, StreamRow row, string figure, Func<Figures, double> read) =>
        new(name, o => o with { Judge = without(o.Judge) }, row, figure, read);
}
