namespace PulseStream.Cli.Output;

/// <summary>Every name that the lines of a course carry.</summary>
internal static class TrendNames
{
    public const string Course = "course";
    public const string Person = "person";
    public const string Baseline = "baseline";
    public const string BaselineLow = "baselineLow";
    public const string BaselineHigh = "baselineHigh";
    public const string Last = "last";
    public const string LastTime = "lastTime";
    public const string Drop = "drop";
    public const string Days = "days";
    public const string ExpectedLow = "expectedLow";
    public const string ExpectedHigh = "expectedHigh";
    public const string Change = "change";
    public const string Size = "size";
    public const string Found = "found";
    public const string OtherSensor = "otherSensor";
    public const string Exertion = "exertion";
    public const string Rest = "rest";
    public const string After = "after";
    public const string Recheck = "recheck";
    public const string Due = "due";
    public const string Done = "done";
}
