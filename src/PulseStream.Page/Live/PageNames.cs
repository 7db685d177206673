using PulseStream.Readings;
using PulseStream.Triage;

namespace PulseStream.Page.Live;

/// <summary>The names of what travels between program and page; members are named in <see cref="PageMessage"/>.</summary>
internal static class PageNames
{
    public const string Hello = "hello";
    public const string Session = "session";
    public const string Link = "link";
    public const string Person = "person";
    public const string Feeling = "feeling";
    public const string Unkept = "unkept";
    public const string Wave = "wave";
    public const string Second = "second";
    public const string Reading = "reading";
    public const string Sitting = "sitting";
    public const string Advice = "advice";

    private static readonly (Feeling Feeling, string Name)[] Feelings =
    [
        (Triage.Feeling.NotAsked, "not-asked"),
        (Triage.Feeling.Well, "well"),
        (Triage.Feeling.Poorly, "poorly"),
        (Triage.Feeling.Breathless, "breathless"),
        (Triage.Feeling.Severe, "severe"),
    ];

    public static string Of(Feeling feeling) => Feelings.Single(named => named.Feeling == feeling).Name;

    /// <summary>The feeling of a name; null where there is none of that name.</summary>
    public static Feeling? FeelingOf(string? name) => Feelings
        .Where(named => string.Equals(named.Name, name, StringComparison.Ordinal))
        .Select(named => (Feeling?)named.Feeling)
        .FirstOrDefault();

    public static string Of(PageLink link) => link switch
    {
        PageLink.Waiting => "waiting",
        PageLink.Receiving => "receiving",
        PageLink.Silent => "silent",
        PageLink.Lost => "lost",
        PageLink.Ended => "ended",
        _ => throw new ArgumentOutOfRangeException(nameof(link), link, "No link has no name."),
    };

    public static string Of(SittingOutcome outcome) => outcome switch
    {
        SittingOutcome.None => "none",
        SittingOutcome.Accepted => "accepted",
        SittingOutcome.Unsettled => "unsettled",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No outcome has no name."),
    };
}
