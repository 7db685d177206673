using PulseStream.Archive.Columns;
using PulseStream.Archive.Results;
using PulseStream.Archive.Sealing;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Sources;

namespace PulseStream.Archive;

/// <summary>A sealed session. No file of it is believed before its hash has been compared with the one in session.json.</summary>
public sealed class ArchivedSession
{
    private readonly SessionDocument document;

    private ArchivedSession(string folder, SessionDocument document)
    {
        Folder = folder;
        this.document = document;
        Header = document.Header();
    }

    /// <summary>The session's folder.</summary>
    public string Folder { get; }

    /// <summary>The recording, named as it was when it was recorded.</summary>
    public RecordingHeader Header { get; }

    /// <summary>What was counted.</summary>
    public SessionCounts Counts => document.Counts!;

    /// <summary>Whether the session was cut off and completed later.</summary>
    public bool IsRecovered => document.Recovered;

    /// <summary>Whether it is a replay that was cancelled before the recording's end.</summary>
    public bool IsCancelled => document.Cancelled;

    /// <summary>Whose session it is.</summary>
    public SessionIdentity Identity => new(document.Session, document.Person, document.Sensor, document.Site) { Activity = document.Activity };

    /// <summary>How it was judged.</summary>
    public SessionSettings Settings => new(
        document.Curve, document.CurveSettings.GetRawText(), document.Policy, document.PolicySettings.GetRawText(), document.Version);

    /// <summary>Opens a session.</summary>
    /// <param name="path">Its folder, or a file in it.</param>
    /// <exception cref="BadInputException">It is no sealed session, or its description was changed.</exception>
    public static ArchivedSession Open(string path)
    {
        var folder = File.Exists(path) ? Path.GetDirectoryName(Path.GetFullPath(path))! : path;
        var file = Path.Combine(folder, WireNames.SessionFile);
        if (!File.Exists(file))
        {
            throw new BadInputException(folder, $"expected the folder of a sealed session with {WireNames.SessionFile}, found none", "Name a session's folder; a session that was cut off is completed by the next command that is given its archive");
        }

        var found = SessionDocumentFile.Read(file);
        try
        {
            return new(folder, found);
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw ColumnFile.Damaged(file, $"expected a rate of {SampleRate.MeasuredRange}, found {found.SampleRateHz}", e);
        }
    }

    /// <summary>Compares every file with its hash.</summary>
    /// <exception cref="BadInputException">One is missing or was changed.</exception>
    public void Verify()
    {
        foreach (var name in document.Files!.Keys)
        {
            VerifiedPath(name);
        }
    }

    /// <summary>Whether it holds what an instrument showed, and no samples.</summary>
    public bool HoldsShownValues => Header.Columns == SampleColumns.None;

    /// <summary>The samples, to be played again; of a session of shown values its seconds.</summary>
    /// <exception cref="BadInputException">The file is missing or was changed.</exception>
    public Recording OpenRecording() => HoldsShownValues
        ? new ShownRecording(Header.Source, Header.Start, [.. Seconds()], Counts.RefusedRows ?? 0)
        : new ArchivedRecording(Header, Counts, new ColumnFileReader(VerifiedPath(WireNames.SamplesFile)), SessionSealer.ChannelsOf(document));

    /// <summary>The seconds in order.</summary>
    /// <exception cref="BadInputException">The file is missing or was changed.</exception>
    public IEnumerable<Second> Seconds() => Rows(SecondRows.Table).Select(SecondRows.From);

    /// <summary>The beats in order; their index is computed back from their time.</summary>
    /// <exception cref="BadInputException">The file is missing or was changed.</exception>
    public IEnumerable<Beat> Beats() => Rows(BeatRows.Table).Select(row => BeatRows.From(row, Header.Rate));

    /// <summary>The accepted readings in order.</summary>
    /// <exception cref="BadInputException">The file is missing or was changed.</exception>
    public IEnumerable<Reading> Readings() => Rows(ReadingRows.Table).Select(ReadingRows.From);

    /// <summary>The sittings in order.</summary>
    /// <exception cref="BadInputException">A file is missing or was changed.</exception>
    public IEnumerable<Sitting> Sittings()
    {
        var readings = Readings().ToList();
        return Rows(SittingRows.Table).Select(row => SittingRows.From(row, readings));
    }

    /// <summary>The advice in order.</summary>
    /// <exception cref="BadInputException">The file is missing or was changed.</exception>
    public IEnumerable<ArchivedAdvice> Advice() => Rows(AdviceRows.Table).Select(AdviceRows.From);

    /// <summary>Readings, sittings and advice, as quickly as they are to be had: of a short session from session.json, whose seal holds the hashes of the files as well.</summary>
    /// <exception cref="BadInputException">A file is missing or was changed.</exception>
    public SessionOutline Outline()
    {
        if (document.Outline is not { } outline)
        {
            return new([.. Readings()], [.. Sittings()], [.. Advice().Select(advice => new OutlinedAdvice(advice.Second, advice.Level, advice.RecheckAfterMinutes))]);
        }

        // A session of which a file was changed is damaged, whatever session.json remembers of it.
        foreach (var name in OutlineDocument.Files)
        {
            VerifiedPath(name);
        }

        try
        {
            return outline.Read();
        }
        catch (Exception e) when (e is FormatException or OverflowException or ArgumentException)
        {
            throw ColumnFile.Damaged(Path.Combine(Folder, WireNames.SessionFile), $"expected rows of results in its outline, found otherwise ({e.Message.TrimEnd('.')})", e);
        }
    }

    private IEnumerable<Cell[]> Rows(ResultTable table) => ResultFile.Read(VerifiedPath(table.FileName), table);

    private string VerifiedPath(string name)
    {
        var path = Path.Combine(Folder, name);
        SessionSealer.Verify(path, document.Files!.GetValueOrDefault(name));
        return path;
    }
}
