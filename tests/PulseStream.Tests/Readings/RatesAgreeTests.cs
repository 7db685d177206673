using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>The same finger sampled at other rates reads the same: second for second, reading for reading.</summary>
public sealed class RatesAgreeTests
{
    // What a quiet finger may be off by in nearly all seconds, and at worst; twice, because either stream may be off.
    private const double UsualPercent = 2 * 0.3;
    private const double WorstPercent = 2 * 0.6;
    private const double WeakPercent = 2 * 0.7;
    private const double UsualPulse = 2 * 1.5;
    private const double UsualShare = 0.95;
    private const int FromSecond = 15;

    // A whole percent held may turn a few seconds sooner or later where saturation moves.
    private const int SecondsApart = 3;

    private static readonly double[] RatesHz = [50, 100, 250];

    private static readonly Dictionary<string, Finger> Fingers = new(StringComparer.Ordinal)
    {
        ["quiet"] = new(),
        ["low saturation"] = new() { Spo2 = _ => 78, PulsePerMinute = 95 },
        ["slow pulse"] = new() { PulsePerMinute = 44 },
        ["fast pulse"] = new() { PulsePerMinute = 170 },
        ["weak"] = new() { PerfusionPercent = 0.3, BreathingPercent = 0.3 },
        ["fall"] = new() { Spo2 = t => 97 - Math.Clamp((t - 20) / 4, 0, 8), Seconds = 60 },
    };

    public static TheoryData<string> Names => [.. Fingers.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void SecondsAgree(string name)
    {
        var finger = Fingers[name];
        var worst = name == "weak" ? WeakPercent : WorstPercent;
        var heard = Array.ConvertAll(RatesHz, hz => SecondsAt(finger, hz));
        foreach (var (slow, quick) in Pairs(heard))
        {
            var seconds = slow.Keys.Union(quick.Keys).Where(s => s >= FromSecond).ToArray();
            Assert.All(seconds, s => Assert.True(slow.ContainsKey(s) && quick.ContainsKey(s), $"second {s} is usable at one rate only"));
            var percents = seconds.Select(s => Math.Abs(slow[s].Spo2!.Value.Percent - quick[s].Spo2!.Value.Percent)).Order().ToArray();
            var pulses = seconds.Select(s => Math.Abs(slow[s].PulseRatePerMinute!.Value - quick[s].PulseRatePerMinute!.Value)).Order().ToArray();
            Assert.InRange(percents[(int)(UsualShare * percents.Length)], 0, Math.Max(UsualPercent, worst / 2));
            Assert.InRange(percents[^1], 0, worst);
            Assert.InRange(pulses[(int)(UsualShare * pulses.Length)], 0, UsualPulse);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void ReadingsAgree(string name)
    {
        var heard = Array.ConvertAll(RatesHz, hz => Heard.Of(hz, (Fingers[name] with { RateHz = hz }).Samples()).Readings.ToArray());
        foreach (var (slow, quick) in Pairs(heard))
        {
            // A value on its way may hold for five seconds at one rate and for four at the other.
            Assert.Equal(slow[0].WholeSpo2Percent, quick[0].WholeSpo2Percent);
            Assert.InRange(Math.Abs(slow[0].SecondIndex - quick[0].SecondIndex), 0, SecondsApart);
            Assert.Equal(slow[^1].WholeSpo2Percent, quick[^1].WholeSpo2Percent);
            Assert.InRange(Math.Abs(slow[^1].SecondIndex - quick[^1].SecondIndex), 0, SecondsApart);
        }
    }

    private static Dictionary<long, UsableSecond> SecondsAt(Finger finger, double hz) =>
        Heard.Of(hz, (finger with { RateHz = hz }).Samples()).Usable.ToDictionary(s => s.SecondIndex);

    private static IEnumerable<(T Slow, T Quick)> Pairs<T>(T[] all) =>
        all.SelectMany((slow, k) => all[(k + 1)..].Select(quick => (slow, quick)));
}
