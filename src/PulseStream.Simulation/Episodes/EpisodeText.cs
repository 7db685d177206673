using PulseStream.Samples;

namespace PulseStream.Simulation.Episodes;

/// <summary>
/// Episodes as text: KIND:FROM-TO:KEY=VALUE,… in seconds, `all` instead of FROM-TO for the whole recording, the last part only
/// where something differs from its default. Kinds and keys: motion (kind=broadband|rhythmic|pulse, size, hz, ratio, apart,
/// channel=both|red|infrared), off (level), half-off (leak, red), slip (leak, red), lifeless (level, red, stir), venous (size, ratio,
/// lag), ambient (percent), flicker (hz, percent), clip (brightness), gap.
/// </summary>
public static class EpisodeText
{
    private const string Kinds = "motion, off, half-off, slip, lifeless, venous, ambient, flicker, clip, gap";
    private const double Most = 1000;

    /// <summary>Reads an episode.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="BadInputException">The text is no episode.</exception>
    public static Episode Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var fields = new EpisodeFields(text);
        var (from, to) = fields.Span;
        Episode episode = fields.Kind switch
        {
            "motion" => Motion(from, to, fields),
            "off" => new FingerOffEpisode(from, to, fields.Number("level", 0.03, 0, Most)),
            "half-off" => new HalfOffEpisode(from, to, fields.Number("leak", 0.6, 0, Most), fields.Number("red", 1, 0, Most)),
            "slip" => new SlipEpisode(from, to, fields.Number("leak", 1, 0, Most), fields.Number("red", 1.3, 0, Most)),
            "lifeless" => new LifelessEpisode(from, to, fields.Number("level", 0.8, 0, Most), fields.Number("red", 1.1, 0, Most), fields.Number("stir", 0.02, 0, 100)),
            "venous" => new VenousEpisode(from, to, fields.Number("size", 1, 0, Most), fields.Number("ratio", 1.6, 0, 5), fields.Number("lag", 0.2, 0, 1)),
            "ambient" => new AmbientEpisode(from, to, fields.Number("percent", 10, 0, Most)),
            "flicker" => new FlickerEpisode(from, to, fields.Number("hz", 101.3, 0, 10_000), fields.Number("percent", 1, 0, Most)),
            "clip" => new ClipEpisode(from, to, fields.Number("brightness", 2.5, 0, Most)),
            "gap" => new GapEpisode(from, to),
            _ => throw fields.Wrong($"expected one of {Kinds}, found '{fields.Kind}'"),
        };
        fields.RequireAllRead();
        return episode;
    }

    private static MotionEpisode Motion(double from, double to, EpisodeFields fields) => new(
        from,
        to,
        fields.Word("kind", MotionKind.Broadband),
        fields.Number("size", 2, 0, Most),
        fields.Number("hz", 1.5, 0.01, 50),
        fields.Number("ratio", 1, -5, 5),
        fields.Number("apart", 0.2, 0, 1),
        fields.Word("channel", LightChannels.Both));
}
