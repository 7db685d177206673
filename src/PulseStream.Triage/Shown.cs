namespace PulseStream.Triage;

/// <summary>How numbers and feelings are written in advice.</summary>
internal static class Shown
{
    /// <summary>A saturation, cut to a tenth.</summary>
    public static string Spo2(double percent) =>
        // Cut, not rounded: 94.96 must not be shown as 95 beside what is said of [90, 95).
        (Math.Floor((decimal)percent * 10) / 10).ToString("0.#");

    public static string Rate(double perMinute) => perMinute.ToString("0.#");

    public static string Minutes(double minutes) => minutes switch
    {
        >= 120 when minutes % 60 == 0 => $"{minutes / 60:0} hours",
        1 => "1 minute",
        _ => $"{minutes:0.#} minutes",
    };

    public static string Of(Feeling feeling) => feeling switch
    {
        Feeling.NotAsked => "feeling not asked",
        Feeling.Well => "well",
        Feeling.Poorly => "poorly",
        Feeling.Breathless => "breathless",
        _ => "severe",
    };
}
