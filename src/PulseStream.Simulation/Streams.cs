namespace PulseStream.Simulation;

/// <summary>One stream of chance for each thing left to it, so that none moves when another is changed.</summary>
internal static class Streams
{
    public const ulong Interval = 1;
    public const ulong Height = 2;
    public const ulong SecondWave = 3;
    public const ulong Rhythm = 4;
    public const ulong RespirationWander = 5;
    public const ulong Baseline = 6;
    public const ulong BaselineOfRed = 7;
    public const ulong Light = 8;
    public const ulong Dark = 9;
    public const ulong Missing = 10;
    public const ulong Repeat = 11;
    public const ulong Acceleration = 12;

    // Episodes draw from seeds of their own, by their place in the scenario.
    private const ulong FirstOfEpisodes = 1000;
    private const ulong BetweenEpisodes = 0xD1B54A32D192ED03;

    /// <summary>Seed of an episode.</summary>
    public static ulong SeedOfEpisode(ulong seed, int number) => unchecked(seed + ((FirstOfEpisodes + (ulong)number) * BetweenEpisodes));
}
