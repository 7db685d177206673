using System.Runtime.ExceptionServices;
using System.Text;
using PulseStream.Archive;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Output;
using PulseStream.Readings;
using PulseStream.Readings.Curves;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Commands;

/// <summary>Runs one recording after another from source to printer and archive.</summary>
internal sealed class SessionRun(SessionOrder order, ResultStream results, ResultPrinter printer)
{
    private bool _isAnnounced;

    /// <summary>Whether nobody reads on, and nothing is kept.</summary>
    public bool IsForNobody => results.HasLostReader && order.Archive is null;

    /// <summary>Completes what was cut off, before anything else is done.</summary>
    public void PrepareArchive()
    {
        if (order.Archive is { } archive)
        {
            SessionArchive.EnsureWritable(archive);
            ArchiveRecovery.RecoverAll(archive, order.Say);
        }
    }

    /// <summary>Tells of a session that still waits for its first sample.</summary>
    public void Announce(OpenedRecording opened)
    {
        var judgement = JudgementOf(opened);
        Show(new SessionStarted(opened.Recording.Header, judgement.Curve.Name, judgement.Policy.Name), isLive: true);
        _isAnnounced = true;
    }

    /// <summary>Runs a recording to its end, or until cancelled.</summary>
    /// <param name="opened">The recording.</param>
    /// <param name="isKept">Whether it goes into the archive, where there is one; one without a sample does not.</param>
    /// <param name="cancel">Ends it early.</param>
    public void Run(OpenedRecording opened, bool isKept, CancellationToken cancel)
    {
        var judgement = JudgementOf(opened);
        using var archive = isKept && order.Archive is { } folder ? Begin(folder, opened, judgement) : null;
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        ExceptionDispatchInfo? failure = null;
        using var session = MeasurementSession.Events(opened.Recording, judgement, archive, stop.Token).Subscribe(
            told =>
            {
                Show(told, opened.IsLive);

                if (IsForNobody)
                {
                    stop.Cancel();
                }
            },
            problem => failure = ExceptionDispatchInfo.Capture(problem));
        failure?.Throw();
        results.Flush();
    }

    private void Show(SessionEvent told, bool isLive)
    {
        if (_isAnnounced && told is SessionStarted)
        {
            return;
        }

        printer.Print(told);
        if (isLive && told is SessionStarted or SecondJudged or AdviceGiven)
        {
            results.Flush();
        }
    }

    private Judgement JudgementOf(OpenedRecording opened)
    {
        // An archived session is judged again as it was, unless told otherwise.
        var settings = opened.Session?.Settings;
        var curve = order.Curve
            ?? (settings is null ? CalibrationCurve.TextbookLine : CurveFile.Parse(Encoding.UTF8.GetBytes(settings.CurveJson), opened.Session!.Folder));
        var policy = order.Policy
            ?? (settings is null ? TriagePolicy.AdultsAtHomeSeaLevel : TriagePolicy.Parse(settings.PolicyJson, opened.Session!.Folder));
        var person = order.IdentityOf("any", opened.Session?.Identity).Person;
        return new Judgement(
            curve,
            new ReadingOptions(),
            policy,
            order.CircumstancesFor(curve),
            [.. order.Previous, .. EarlierReadings.Of(order.Archive, person, opened.Recording.Header.Start, policy)]);
    }

    private SessionWriter Begin(string folder, OpenedRecording opened, Judgement judgement)
    {
        var header = opened.Recording.Header;
        var name = opened.Session?.Identity.Session ?? SessionIdentity.SessionNameOf(header);
        var settings = new SessionSettings(
            judgement.Curve.Name, CurveFile.Format(judgement.Curve), judgement.Policy.Name, judgement.Policy.Json, ProgramVersion.Text);
        return SessionWriter.Create(
            folder, order.IdentityOf(name, opened.Session?.Identity), header, settings, opened.IsLive ? JournalPace.Live : JournalPace.Replay);
    }
}
