using System.Text;
using PulseStream.Archive;
using PulseStream.Cli.Inputs;
using PulseStream.Readings;
using PulseStream.Readings.Curves;
using PulseStream.Sessions;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Commands;

/// <summary>What a session needs before its first sample: by what it is judged, and where it is kept.</summary>
internal static class SessionBeginning
{
    /// <summary>Curve, policy and history for a recording.</summary>
    public static Judgement JudgementOf(SessionOrder order, OpenedRecording opened)
    {
        // An archived session is judged again as it was, unless told otherwise.
        var settings = opened.Session?.Settings;
        var curve = order.Curve
            ?? (settings is null ? opened.Recording is ShownRecording ? CalibrationCurve.OfInstrument : CalibrationCurve.TextbookLine : CurveFile.Parse(Encoding.UTF8.GetBytes(settings.CurveJson), opened.Session!.Folder));
        var policy = order.Policy
            ?? (settings is null ? TriagePolicy.AdultsAtHomeSeaLevel : TriagePolicy.Parse(settings.PolicyJson, opened.Session!.Folder));
        var person = order.IdentityOf("any", opened.Session?.Identity).Person;
        return new Judgement(
            curve,
            new ReadingOptions(),
            policy,
            order.CircumstancesFor(curve),
            [.. order.Previous, .. EarlierReadings.Of(order.Archive, person, opened.Recording.Header.Start, policy, order.DamagedHistory)]);
    }

    /// <summary>Begins the session in an archive.</summary>
    public static SessionWriter Archive(string folder, SessionOrder order, OpenedRecording opened, Judgement judgement)
    {
        var header = opened.Recording.Header;
        var name = opened.Session?.Identity.Session ?? SessionIdentity.SessionNameOf(header);
        var settings = new SessionSettings(
            judgement.Curve.Name, CurveFile.Format(judgement.Curve), judgement.Policy.Name, judgement.Policy.Json, ProgramVersion.Text);
        return SessionWriter.Create(
            folder, order.IdentityOf(name, opened.Session?.Identity), header, settings, opened.IsLive ? JournalPace.Live : JournalPace.Replay);
    }

    /// <summary>Makes sure that the archive of an order can be written, and completes what was cut off in it.</summary>
    public static void PrepareArchive(SessionOrder order)
    {
        if (order.Archive is { } archive)
        {
            SessionArchive.EnsureWritable(archive);
            ArchiveRecovery.RecoverAll(archive, order.Say);
        }
    }
}
