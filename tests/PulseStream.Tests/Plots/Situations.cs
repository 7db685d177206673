using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;

namespace PulseStream.Tests.Plots;

/// <summary>Sessions that pictures have to cope with, by name.</summary>
internal static class Situations
{
    private const Reasons EveryRefusal = Reasons.Settling | Reasons.NoFinger | Reasons.Saturated | Reasons.AmbientLight | Reasons.Motion
        | Reasons.Misplaced | Reasons.LowPerfusion | Reasons.NoPulse | Reasons.MissingSamples | Reasons.OutOfRange;

    public static readonly IReadOnlyDictionary<string, Func<string, string>> All = new Dictionary<string, Func<string, string>>(StringComparer.Ordinal)
    {
        ["quiet"] = archive => New(archive).Refused(6, Reasons.Settling).Usable(9, 97).Accepted(97).Usable(75, 97)
            .SittingEnds(SittingOutcome.Accepted).Advised("usual").Seal(),
        ["many-reasons"] = archive => ManyReasons(archive),
        ["every-reason-at-once"] = archive => New(archive).Refused(3, EveryRefusal).Usable(20, 92, warnings: Reasons.LowPerfusion | Reasons.Irregular).Accepted(92).Seal(),
        ["nothing-accepted"] = archive => New(archive).Refused(5, Reasons.Settling).Usable(3, 95).Refused(30, Reasons.Motion)
            .SittingEnds(SittingOutcome.None).Advised("recheck", 0).Seal(),
        ["nothing-usable"] = archive => New(archive).Refused(20, Reasons.NoFinger).Seal(),
        ["infrared-alone"] = archive => New(archive, SampleColumns.Infrared).Refused(4, Reasons.Settling).Usable(50, 0)
            .SittingEnds(SittingOutcome.Accepted, medianPulse: 72).Advised("usual").Seal(new SessionIdentity("hut-evening")),
        ["own-plethysmogram"] = archive => New(archive, SampleColumns.Pleth).Refused(4, Reasons.Settling).Usable(50, 0).Seal(),
        ["two-hours"] = TwoHours,
        ["five-seconds"] = archive => New(archive).Refused(5, Reasons.Settling).SittingEnds(SittingOutcome.None).Seal(),
        ["empty"] = archive => New(archive).Seal(),
        ["long-names"] = archive => new InventedSession(
                archive,
                InventedSession.TwoLights with { Source = string.Concat(Enumerable.Repeat("the-evening-round-of-the-warden-", 8)) + "\n.csv" },
                """{"name":"valley-clinic","arms":1.8}""")
            .Refused(4, Reasons.Settling).Usable(20, 88).Accepted(88).SittingEnds(SittingOutcome.Unsettled).Advised("doctor-now").Seal(new SessionIdentity(new string('s', 60), new string('p', 60))),
    };

    private static InventedSession New(string archive, SampleColumns columns = SampleColumns.Red | SampleColumns.Infrared) =>
        new(archive, InventedSession.TwoLights with { Columns = columns });

    private static string ManyReasons(string archive) => New(archive)
        .Refused(5, Reasons.Settling).Usable(12, 96).Accepted(96).Refused(6, Reasons.Motion).Refused(4, Reasons.Settling)
        .Usable(11, 95).Accepted(95).Usable(8, 93).Accepted(93).Refused(8, Reasons.AmbientLight | Reasons.Saturated).Refused(4, Reasons.Settling)
        .Usable(15, 94, warnings: Reasons.LowPerfusion, half: 2).Accepted(94).Refused(5, Reasons.LowPerfusion | Reasons.NoPulse).Refused(6, Reasons.Misplaced)
        .SittingEnds(SittingOutcome.Unsettled).Advised("recheck", 60).Refused(7, Reasons.NoFinger).Missing(6).Refused(4, Reasons.Settling)
        .Usable(30, 91, 110, Reasons.Irregular).Accepted(91).Refused(2, Reasons.OutOfRange)
        .SittingEnds(SittingOutcome.Accepted).Advised("call").Seal();

    private static string TwoHours(string archive)
    {
        var session = New(archive).Refused(8, Reasons.Settling);
        var random = new Random(7);
        while (session.Length < 7200)
        {
            var spo2 = random.Next(88, 99);
            session.Usable(random.Next(20, 200), spo2, random.Next(60, 90), random.Next(5) == 0 ? Reasons.LowPerfusion : Reasons.None).Accepted(spo2);
            session.Refused(random.Next(1, 30), (Reasons)(1 << random.Next(10)));
        }

        return session.SittingEnds(SittingOutcome.Unsettled).Advised("doctor-now").Seal();
    }
}
