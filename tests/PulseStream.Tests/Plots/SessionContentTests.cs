using PulseStream.Plots;
using PulseStream.Plots.Panels;
using PulseStream.Readings;
using PulseStream.Tests.Archive;
using Xunit;

namespace PulseStream.Tests.Plots;

public class SessionContentTests
{
    [Fact]
    public void TheDevicesAccuracyWidensTheInterval()
    {
        using var archive = new TemporaryArchive();
        var plain = SessionContent.Read(new InventedSession(archive.Folder, InventedSession.TwoLights).Usable(3, 90).Seal());
        var stated = SessionContent.Read(new InventedSession(archive.Folder, InventedSession.TwoLights, """{"name":"clinic","arms":2}""").Usable(3, 90).Seal());

        var before = plain.Seconds[0].Usable!.Value.Spo2!.Value;
        var after = stated.Seconds[0].Usable!.Value.Spo2!.Value;

        // √(0.8² + (1.96 · 2)²): independent errors add in quadrature (common practice).
        Assert.Equal(before.Percent - 4.0008, after.LowPercent, 1e-3);
        Assert.Contains("curve textbook-line (device accuracy 2 points, in the interval)", Joined(SessionTitle.Details(stated)), StringComparison.Ordinal);
    }

    [Fact]
    public void TheTitleNamesSourcePersonAndStart()
    {
        using var archive = new TemporaryArchive();
        var content = SessionContent.Read(Situations.All["quiet"](archive.Folder));

        Assert.Equal("hut-evening.csv · person guest-12 · 2026-03-01 23:30:00 UTC+01:00", Joined(SessionTitle.Headline(content.Session)));
    }

    [Theory]
    [InlineData("quiet", "sitting accepted: 97 %, pulse 72/min", "highest advice: usual")]
    [InlineData("many-reasons", "2 sittings: 1 accepted (91 %), 1 unsettled (lowest 93 %)", "highest advice: call")]
    [InlineData("nothing-accepted", "sitting without an accepted reading", "highest advice: recheck now")]
    [InlineData("infrared-alone", "sitting without SpO₂, pulse 72/min", "highest advice: usual")]
    [InlineData("empty", "no sitting", "no advice")]
    public void TheTitleSaysHowItEnded(string name, string outcome, string advice)
    {
        using var archive = new TemporaryArchive();
        var content = SessionContent.Read(Situations.All[name](archive.Folder));

        Assert.Equal($"{outcome} · {advice} · curve textbook-line · policy adults-at-home", Joined(SessionTitle.Details(content)));
    }

    [Fact]
    public void TheStripHasARowForEachReasonThatOccursAndForNoOther()
    {
        Second[] seconds = [new UnusableSecond(0, Reasons.Motion | Reasons.Settling, null), new UsableSecond(1, null, 70, 2, Reasons.Irregular)];

        Assert.Equal([Reasons.Settling, Reasons.Motion, Reasons.Irregular], ConditionPanel.ReasonsIn(seconds));
    }

    [Fact]
    public void ARefusedSecondAndOneLeftOutEndARun()
    {
        Second[] seconds = [Usable(0), Usable(1), new UnusableSecond(2, Reasons.Motion, null), Usable(3), Usable(9)];

        var runs = SecondRun<double>.Of(seconds, second => second.Usable?.PulseRatePerMinute);

        Assert.Equal([(0, 2), (3, 4), (9, 10)], runs.Select(run => (run.From, run.To)));
    }

    private static string Joined(IEnumerable<string> parts) => string.Join(" · ", parts);

    private static UsableSecond Usable(long index) => new(index, null, 70 + index, null, Reasons.None);
}
