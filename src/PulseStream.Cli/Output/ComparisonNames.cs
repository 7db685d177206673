using PulseStream.Comparison;

namespace PulseStream.Cli.Output;

/// <summary>Every name that the lines of a comparison carry.</summary>
internal static class ComparisonNames
{
    public const string Recording = "recording";
    public const string Total = "total";
    public const string OnlyA = "onlyA";
    public const string OnlyB = "onlyB";
    public const string LargestMove = "largestMove";
    public const string UsedA = "usedA";
    public const string UsedB = "usedB";
    public const string AdviceA = "adviceA";
    public const string AdviceB = "adviceB";
    public const string VerdictName = "verdict";
    public const string MoveSecond = "moveSecond";
    public const string MoveFrom = "moveFrom";
    public const string MoveTo = "moveTo";
    public const string ReadingsMoved = "readingsMoved";
    public const string JudgedByA = "judgedByA";
    public const string JudgedByB = "judgedByB";
    public const string Problem = "problem";
    public const string Recordings = "recordings";
    public const string Unreadable = "unreadable";
    public const string Exceeded = "exceeded";

    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Same => "same",
        Verdict.Moved => "moved",
        Verdict.Gained => "gained",
        Verdict.Lost => "lost",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "No verdict has no name."),
    };
}
