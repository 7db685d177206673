using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Names what disturbs a second: light that has come, a lamp's line, else movement.</summary>
/// <param name="options">The limits.</param>
/// <param name="light">The calm finger's light, and what has come to it.</param>
/// <param name="leapt">Whether it came at once.</param>
internal sealed class DisturbanceCause(JudgeOptions options, CalmLight light, LeaptLight leapt)
{
    // Further back than any recording reaches, and no difference to it overflows.
    private const long NeverTold = long.MinValue / 2;
    private readonly RoomLight roomLight = new(options);
    private long lampSecond = NeverTold;

    /// <summary>A second was believed: where it was so beside a lamp's line, a window that holds some of that second has the lamp in it as well.</summary>
    /// <param name="second">The second.</param>
    public void Tell(in SignalSecond second) => lampSecond = second.Fit.IsPureLine ? second.SecondIndex : lampSecond;

    /// <summary>The finger has left: the next one's window holds no second of it, and a lamp that is still on shows there by itself.</summary>
    public void Forget() => lampSecond = NeverTold;

    /// <summary>Why the two lights disagree: light that moved, a line of mains light, else movement.</summary>
    /// <param name="second">The second.</param>
    /// <param name="calm">The calm finger's pulse.</param>
    public Reasons OfDisagreement(in SignalSecond second, in CalmPulse calm) =>
        HasMoved(second, calm) ? OfMovedLight(second, calm)
        : roomLight.Is(second, calm.Ratio, calm.LogHeight) ? Reasons.AmbientLight | Reasons.Motion
        : Reasons.Motion | LampOf(second, calm);

    /// <summary>Why a wave in which both lights agree is no pulse: light that moved, room light alone, else something shakes; whether a finger, only a finger seen before can tell.</summary>
    /// <param name="second">The second.</param>
    /// <param name="calm">The calm finger's pulse.</param>
    public Reasons OfShape(in SignalSecond second, in CalmPulse calm)
    {
        var distance = Math.Abs(second.Fit.Ratio - RoomLight.MixOf(second));
        if (second.Fit.Lines == 0 && distance < options.RoomLightAlone && second.Fit.Disagreement < options.RoomLightAlone)
        {
            return Reasons.AmbientLight | Reasons.NoFinger;
        }

        return HasMoved(second, calm) ? OfMovedLight(second, calm)
            : roomLight.Is(second, calm.Ratio, calm.LogHeight) || IsMostlyRoomLight(second, calm) ? Reasons.AmbientLight | Reasons.Motion
            : LampOf(second, calm) | Reasons.Motion | (calm.IsKnown ? Reasons.None : Reasons.Misplaced);
    }

    /// <summary>What the light is that has come past the finger and divides its pulse.</summary>
    /// <param name="second">The second.</param>
    /// <param name="calm">The calm finger's pulse.</param>
    public Reasons OfLeak(in SignalSecond second, in CalmPulse calm) => light.CauseOf(second, leapt.IsIn(second)) | PureLampOf(second, calm);

    /// <summary>What disturbs a second that has yet to settle: light that has come, or a lamp's line.</summary>
    /// <param name="second">The second.</param>
    /// <param name="calm">The calm finger's pulse.</param>
    public Reasons BesideSettling(in SignalSecond second, in CalmPulse calm) =>
        HasMoved(second, calm) ? OfMovedLight(second, calm) : LampBeside(second, calm);

    /// <summary>The lamp or the even movement that a second's line was, where all of what disturbs it is one.</summary>
    /// <param name="second">The second.</param>
    /// <param name="calm">The calm finger's pulse.</param>
    public Reasons LampBeside(in SignalSecond second, in CalmPulse calm) =>
        second.Fit.IsPureLine && PureLampOf(second, calm) != Reasons.None ? Reasons.AmbientLight | Reasons.Motion : Reasons.None;

    /// <summary>The lamp beside which a second was believed that the window still holds some of.</summary>
    /// <param name="second">The second.</param>
    public Reasons LampJustTold(in SignalSecond second) => second.SecondIndex - lampSecond < options.SettlingSeconds ? Reasons.AmbientLight : Reasons.None;

    private bool HasMoved(in SignalSecond second, in CalmPulse calm) => calm.IsKnown && light.HasMoved(second, calm.LogHeight);

    // Light that comes past a finger and stays leaves lights that agree. Where they do not, and no lamp has come, something moves as well.
    private Reasons OfMovedLight(in SignalSecond second, in CalmPulse calm)
    {
        var leak = OfLeak(second, calm);
        return (leak & Reasons.Misplaced) != Reasons.None ? leak | Reasons.Motion : leak;
    }

    // Whatever it adds to either light, a lamp is one frequency; a hand that shakes evenly is nearly one as well. What has the
    // pulse's own frequency is rather the pulse of veins.
    private Reasons LampOf(in SignalSecond second, in CalmPulse calm) =>
        (calm.IsKnown && second.Fit.Newest.LineShare > options.Lamp.LineShare && roomLight.IsOffFirstWave(second.Fit.Newest.LineHz, calm.PeriodSeconds))
            || (second.Fit.WasPureLine && IsLampsLine(second.Fit, calm))
            ? Reasons.AmbientLight
            : PureLampOf(second, calm);

    // Where the light itself has moved, chance makes two seconds of a slip look like one frequency; not a whole window.
    private Reasons PureLampOf(in SignalSecond second, in CalmPulse calm) =>
        (second.Fit.IsPureLine && IsLampsLine(second.Fit, calm)) || IsMostlyRoomLight(second, calm) ? Reasons.AmbientLight : LampJustTold(second);

    private bool IsLampsLine(in RatioFit fit, in CalmPulse calm) =>
        fit.IsRoomLight || roomLight.IsOffFirstWave(fit.LineHz, calm.PeriodSeconds) || fit.LinesExplain >= options.Lamp.PurestLineShare;

    // A pulse that has room light's own mixture has it still when it slips.
    private bool IsMostlyRoomLight(in SignalSecond second, in CalmPulse calm) =>
        roomLight.IsMost(second) && !(calm.IsKnown && calm.HasSamePeriod(second, options) && Math.Abs(second.Fit.Ratio - calm.Ratio) < options.SeparatedJump);
}
