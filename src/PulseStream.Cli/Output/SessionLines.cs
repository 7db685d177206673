using System.Globalization;
using PulseStream.Archive;

namespace PulseStream.Cli.Output;

/// <summary>Shows a session of an archive in one line.</summary>
internal static class SessionLines
{
    private const string Unknown = "-";

    public static void Print(NdjsonLine line, ArchivedSession session) => line.Begin(WireNames.Session)
        .AddText("person", session.Identity.Person)
        .Add(WireNames.Session, session.Identity.Session)
        .AddText("start", session.Header.Start?.ToString("yyyy-MM-dd'T'HH:mm:ssK", CultureInfo.InvariantCulture))
        .Add(WireNames.Source, session.Header.Source)
        .Add(WireNames.Seconds, (long?)session.Counts.Seconds)
        .Add(WireNames.UsableSeconds, (long?)session.Counts.UsableSeconds)
        .Add(WireNames.ReadingCount, (long?)session.Counts.Readings)
        .Add(WireNames.Curve, session.Settings.CurveName)
        .Add(WireNames.Policy, session.Settings.PolicyName)
        .Add(WireNames.Version, session.Settings.Version)
        .Add(WireNames.CurveHash, session.Settings.CurveHash)
        .Add(WireNames.PolicyHash, session.Settings.PolicyHash)
        .Add("folder", session.Folder)
        .End();

    public static string TextOf(ArchivedSession session)
    {
        var start = session.Header.Start?.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture) ?? Unknown;
        return $"{session.Identity.Person ?? Unknown,-12}  {start,-23}  {session.Counts.Seconds,6} s, {session.Counts.UsableSeconds,6} usable, {session.Counts.Readings,3} readings  {session.Identity.Session}";
    }
}
