using PulseStream.Samples;
using PulseStream.Simulation.Blood;
using PulseStream.Simulation.Episodes;
using PulseStream.Simulation.Tracks;

namespace PulseStream.Simulation;

/// <summary>The parts of a scenario that people write as text.</summary>
public static class ScenarioText
{
    private const string RhythmWords = "regular, respiratory, irregular, ectopic, bigeminy";
    private const string RatioWords = "line, 660/940";

    /// <summary>Reads a track such as `97,88@60` or `97,step 88@60`; see <see cref="TrackText"/>.</summary>
    /// <param name="option">The option it was given with: "--spo2".</param>
    /// <param name="text">The text.</param>
    /// <exception cref="BadInputException">The text is no track.</exception>
    public static Track ParseTrack(string option, string text) => TrackText.Parse(option, text);

    /// <summary>Reads an episode such as `motion:20-30:size=3,kind=rhythmic,hz=1.4`; see <see cref="EpisodeText"/>.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="BadInputException">The text is no episode.</exception>
    public static Episode ParseEpisode(string text) => EpisodeText.Parse(text);

    /// <summary>Reads a rhythm: regular, respiratory, irregular, ectopic or bigeminy.</summary>
    /// <param name="text">The word.</param>
    /// <exception cref="BadInputException">The word is no rhythm.</exception>
    public static Rhythm ParseRhythm(string text) => text switch
    {
        "regular" => Rhythm.Regular,
        "respiratory" => Rhythm.Respiratory,
        "irregular" => Rhythm.Irregular,
        "ectopic" => Rhythm.Ectopic,
        "bigeminy" => Rhythm.Bigeminy,
        _ => throw new BadInputException("--rhythm", $"expected one of {RhythmWords}, found '{text}'", $"Give one of {RhythmWords}"),
    };

    /// <summary>Reads how saturation becomes R: line, or 660/940.</summary>
    /// <param name="text">The word.</param>
    /// <exception cref="BadInputException">The word names no model.</exception>
    public static RatioModel ParseRatio(string text) => text switch
    {
        "line" => RatioModel.Line,
        "660/940" => RatioModel.Extinction660And940,
        _ => throw new BadInputException("--extinction", $"expected one of {RatioWords}, found '{text}'", $"Give one of {RatioWords}"),
    };
}
