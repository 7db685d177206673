using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Early beats that look like second waves: half of the beats, or two thirds of them, are never told for all.</summary>
public sealed class HiddenBeatTests
{
    private const double RateHz = 100;
    private const double Seconds = 40;

    // Within three a minute of the true beats, with room for the windows' ends.
    private const double Tolerance = 5;

    // Eight seconds hold no whole number of groups of three.
    private const double MeanTolerance = 10;

    // A vessel that takes as long to empty as the heart to beat, as stiff arteries do (Windkessel: Frank, Z Biol 1899;37:483); each
    // second beat early and weaker.
    [Theory]
    [InlineData(125, 0.75, 0.7)]
    [InlineData(125, 0.75, 0.45)]
    [InlineData(100, 0.75, 0.7)]
    [InlineData(100, 0.65, 0.7)]
    public void BigeminyOnASlowVesselIsNotToldAtHalfItsRate(double perMinute, double early, double height)
    {
        var usual = 60 / perMinute;
        var heart = Beats((k, _) => k % 2 == 0 ? early * usual : (2 - early) * usual);
        var blood = SlowVessel(heart, k => k % 2 == 1 ? height : 1, 0.75 * usual, 0.3 * Math.Sqrt(usual));
        var heard = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = blood }.Samples()).Usable.ToArray();
        Assert.True(heard.Length > 0.7 * Seconds, $"{heard.Length} usable");
        Assert.All(heard, s => Assert.Equal(perMinute, s.PulseRatePerMinute ?? perMinute, Tolerance));
    }

    // An early beat before four tenths of the pair are over, no pause behind it, of six tenths of the height: the full one's fall makes it look narrow.
    [Fact]
    public void BigeminyWithoutAPauseIsNotToldAtHalfItsRate()
    {
        const double usual = 60.0 / 90;
        const double early = 0.64;
        AllTold(120 / ((1 + early) * usual), Beats((k, _) => (k % 2 == 0 ? early : 1) * usual), k => k % 2 == 1 ? 0.58 : 1.1, 0.167);
    }

    // Every third beat early and weak, and a pause behind it that makes good for the time. On the fall of the one before, little of it rises, or
    // nothing: what is seen are two beats in turn with a time for two.
    [Theory]
    [InlineData(114, 0.65, 0.36, 1.3, 0.15)]
    [InlineData(109, 0.57, 0.33, 1, 0.17)]
    public void TrigeminyIsNotToldAtTwoThirdsOfItsRate(double perMinute, double early, double height, double afterPause, double crestSeconds)
    {
        var usual = 60 / perMinute;
        AllTold(perMinute, Beats((k, _) => (k % 3) switch { 0 => 1, 1 => early, _ => 2 - early } * usual), k => (k % 3) switch { 0 => afterPause, 1 => 1, _ => height }, crestSeconds);
    }

    // The same vessel and no early beats: one beat of the same rate as those that were told before is told.
    [Theory]
    [InlineData(50)]
    [InlineData(62)]
    public void ASlowPulseOnASlowVesselIsTold(double perMinute)
    {
        var usual = 60 / perMinute;
        var blood = SlowVessel(Beats((_, _) => usual), _ => 1, 0.75 * usual, 0.3 * Math.Sqrt(usual));
        var heard = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = blood }.Samples()).Usable.ToArray();
        Assert.True(heard.Length > 0.7 * Seconds && heard.All(s => s.PulseRatePerMinute is not null), $"{heard.Count(s => s.PulseRatePerMinute is not null)} of {heard.Length}");
    }

    private static void AllTold(double perMinute, double[] beats, Func<int, double> height, double crestSeconds)
    {
        var heard = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = t => GammaBeats(beats, height, t, crestSeconds) }.Samples()).Usable.ToArray();
        Assert.True(heard.Length > 0.7 * Seconds, $"{heard.Length} usable");
        Assert.All(heard, s => Assert.Equal(perMinute, s.PulseRatePerMinute ?? perMinute, MeanTolerance));
    }

    // A volume that fills with a power of the time and empties exponentially: a chain of equal compartments (common practice).
    private static double GammaBeats(double[] beats, Func<int, double> height, double t, double crestSeconds)
    {
        const double steepness = 2.8;
        var volume = 0.0;
        for (var k = 0; k < beats.Length && beats[k] < t; k++)
        {
            var since = (t - beats[k]) / crestSeconds;
            volume += height(k) * Math.Pow(since * Math.Exp(1 - since), steepness);
        }

        return volume;
    }

    private static double[] Beats(Func<int, double, double> interval) => Heart.Of(Seconds, interval).Fronts;

    // Each ejection, a half sine, fills the vessel, which empties by a share of what it holds.
    private static Func<double, double> SlowVessel(double[] beats, Func<int, double> height, double emptySeconds, double ejectionSeconds)
    {
        const double step = 0.001;
        var volumes = new double[(int)((Seconds + 1) / step)];
        var k = 0;
        for (var n = 1; n < volumes.Length; n++)
        {
            var t = n * step;
            k += k + 1 < beats.Length && beats[k + 1] <= t ? 1 : 0;
            var since = t - beats[k];
            var flow = since >= 0 && since < ejectionSeconds ? height(k) * Math.Sin(Math.PI * since / ejectionSeconds) : 0;
            volumes[n] = volumes[n - 1] + (step * ((3 * flow) - (volumes[n - 1] / emptySeconds)));
        }

        return t => volumes[Math.Clamp((int)(t / step), 0, volumes.Length - 1)];
    }
}
