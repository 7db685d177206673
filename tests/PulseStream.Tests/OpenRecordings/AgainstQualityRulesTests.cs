using PulseStream.Samples;
using Xunit;
using Recording = System.Collections.Generic.IEnumerable<PulseStream.Tests.OpenRecordings.JudgedWindow>;

namespace PulseStream.Tests.OpenRecordings;

/// <summary>
/// Our verdict beside the published rules (<see cref="QualityRules"/>) on the same ten-second windows, one ending with each second, of
/// recordings whose pulse is known: the open recordings of the neighbouring tests, with their sources. The rules judge the beats of our own finder.
/// </summary>
public sealed class AgainstQualityRulesTests
{
    // Ours gives a pulse every second over eight seconds, the rules over ten: in noise it may pass one wrong in fifty more.
    private const double MoreWrong = 0.02;

    // A weakness that is known: at 5 dB one light's rate under an irregular verdict counts noise as beats, and a third of what is passed is wrong.
    private const double MoreWrongInNoise = 0.35;

    // Within five a minute a rate is called accurate (Charlton, Physiol Meas 2022;43:085007).
    private const double WrongPerMinute = 5;

    // Our rate is that of the eight seconds that end with the second.
    private const double OurSeconds = 8;

    // The references average over several seconds themselves and lag by up to four.
    private const int LargestLagSeconds = 4;

    [Fact]
    public void HardlyMoreWrongPulsesFromAFingerAtRest()
    {
        var columns = FingerInIntensiveCare();
        AssertHardlyMoreWrong(AgainstEcg(columns[^2], columns[^1]));
    }

    [Theory]
    [InlineData(5)]
    [InlineData(0)]
    [InlineData(-5)]
    public void HardlyMoreWrongPulsesFromNoiseInTheBandOfThePulse(double decibels)
    {
        var columns = FingerInIntensiveCare();
        var size = Math.Sqrt(BeatsAgainstEcgTests.PowerAboutMovingMean(columns[^2]) / Math.Pow(10, decibels / 10));
        AssertHardlyMoreWrong(Enumerable.Range(1, 3).SelectMany(seed => AgainstEcg(Noisy(columns[^2], size, seed), columns[^1])), MoreWrongInNoise);
    }

    [Fact]
    public void HardlyMoreWrongPulsesInInducedHypoxaemia() =>
        AssertHardlyMoreWrong(from subject in new[] { "100001", "100004", "100005" } from hand in new[] { "left", "right" } from window in AgainstReferences(subject, hand) select window);

    [Fact]
    public void HardlyMoreWrongPulsesFromAWristInExercise() =>
        AssertHardlyMoreWrong(new[] { "s1-walk", "s1-low-resistance-bike", "s1-high-resistance-bike" }.SelectMany(InExercise));

    private static void AssertHardlyMoreWrong(Recording recordings, double moreWrong = MoreWrong)
    {
        var windows = recordings.ToArray();
        var ours = Passed(windows, w => w.OurError);
        var rules = Passed(windows, w => w.RulesError);
        var right = windows.Where(w => w.BeatError <= WrongPerMinute).ToArray();
        var said = $"{windows.Length} windows, beats right in {right.Length}. Wrong of passed: ours {Share(ours.Wrong, ours.Count)}, rules {Share(rules.Wrong, rules.Count)}. "
            + $"Right but refused: ours {Share(right.Count(w => double.IsNaN(w.OurError)), right.Length)}, rules {Share(right.Count(w => double.IsNaN(w.RulesError)), right.Length)}";
        TestContext.Current.TestOutputHelper?.WriteLine(said);
        Assert.InRange(ours.Wrong, 0, ours.Count * (((double)rules.Wrong / Math.Max(1, rules.Count)) + moreWrong));
    }

    private static (int Count, int Wrong) Passed(JudgedWindow[] windows, Func<JudgedWindow, double> error) =>
        (windows.Count(w => !double.IsNaN(error(w))), windows.Count(w => error(w) > WrongPerMinute));

    private static string Share(int part, int whole) => $"{part} of {whole} ({(whole == 0 ? 0 : 100.0 * part / whole):F1} %)";

    private static double[][] FingerInIntensiveCare() => OpenData.Columns(Path.Combine("icu-pleth", "record-01-120s-480s.csv"));

    private static double[] Noisy(double[] pleth, double size, int seed) =>
        [.. pleth.Zip(BeatsAgainstEcgTests.Noise(pleth.Length, seed), (p, n) => p + (size * n))];

    private static Recording AgainstEcg(double[] pleth, double[] ecg)
    {
        const double rateHz = 125;
        return Judged(OpenData.Run(rateHz, SampleColumns.Pleth, pleth.Select(Sample.OfPleth)), pleth, rateHz, TruthOfEcg(ecg, rateHz));
    }

    private static Recording InExercise(string recording)
    {
        const double rateHz = 256;
        var columns = OpenData.Columns(Path.Combine("wrist-exercise", recording + ".csv"));
        var samples = columns[2].Select((p, n) => WristInExerciseTests.Moving(p, columns, n));
        return Judged(OpenData.Run(rateHz, SampleColumns.Infrared | SampleColumns.Acceleration, samples), columns[2], rateHz, TruthOfEcg(columns[1], rateHz));
    }

    private static Recording AgainstReferences(string subject, string hand)
    {
        const double rateHz = 30;
        const int green = 1;
        var light = OpenData.Columns(Path.Combine("induced-hypoxaemia", $"{subject}-{hand}.csv"))[green];
        var reference = PulseAgainstReferencesTests.Reference(OpenData.Columns(Path.Combine("induced-hypoxaemia", $"{subject}-reference.csv")));
        var found = OpenData.Run(rateHz, SampleColumns.Infrared, light.Select(g => Sample.OfLight(double.NaN, g)));
        return Judged(found, light, rateHz, (end, _, rate) => reference.Skip(end - 1).Take(LargestLagSeconds + 1)
            .Where(double.IsFinite).Select(r => Math.Abs(r - rate)).DefaultIfEmpty(double.NaN).Min());
    }

    // An ECG that fails the rules itself, as in movement, is no truth.
    private static Func<int, double, double, double> TruthOfEcg(double[] ecg, double rateHz)
    {
        var heart = RPeaks.Times(ecg, rateHz).ToArray();
        return (end, seconds, rate) =>
            QualityRules.Accept(Window(ecg, rateHz, end), rateHz, Beats(heart, end), QualityRules.LeastEcgScore)
                ? Math.Abs(rate - RatePerMinute([.. heart.Where(t => t >= end - seconds && t < end)]))
                : double.NaN;
    }

    private static Recording Judged(OpenData.Found found, double[] signal, double rateHz, Func<int, double, double, double> errorOf)
    {
        var told = found.Beats.Select(b => b.RiseIndex / rateHz).ToArray();
        foreach (var second in found.Seconds)
        {
            var end = (int)second.SecondIndex + 1;
            if (end < QualityRules.WindowSeconds || double.IsNaN(errorOf(end, QualityRules.WindowSeconds, 0)))
            {
                continue;
            }

            var beats = Beats(told, end);
            var beatError = beats.Length < 2 ? double.NaN : errorOf(end, QualityRules.WindowSeconds, RatePerMinute(beats));
            var doRulesPass = QualityRules.Accept(Window(signal, rateHz, end), rateHz, beats, QualityRules.LeastPlethScore);
            var rate = second.Usable?.PulseRatePerMinute;
            yield return new(rate is null ? double.NaN : errorOf(end, OurSeconds, rate.Value), beatError, doRulesPass ? beatError : double.NaN);
        }
    }

    private static double[] Beats(double[] times, int end) =>
        [.. times.Select(t => t - (end - QualityRules.WindowSeconds)).Where(t => t >= 0 && t < QualityRules.WindowSeconds)];

    private static ReadOnlySpan<double> Window(double[] signal, double rateHz, int end) =>
        signal.AsSpan((int)((end - QualityRules.WindowSeconds) * rateHz), (int)(QualityRules.WindowSeconds * rateHz));

    private static double RatePerMinute(double[] beats) => 60 * (beats.Length - 1) / (beats[^1] - beats[0]);
}
