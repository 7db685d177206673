using PulseStream.Samples;

namespace PulseStream.Triage.Policies;

/// <summary>Every number and level that an advice follows, as read from a policy file.</summary>
public sealed class TriagePolicy
{
    internal TriagePolicy(string name, string audience, string source, PolicyBand[] bands)
    {
        Name = name;
        Audience = audience;
        Source = source;
        Bands = bands;
    }

    /// <summary>
    /// The default: adults cared for at home, at sea level, without a chronic lung condition or oxygen therapy (common
    /// practice). Its file is Policies/adults-at-home-sea-level.json of this project.
    /// </summary>
    public static TriagePolicy AdultsAtHomeSeaLevel { get; } = ReadEmbedded("adults-at-home-sea-level.json");

    /// <summary>The policy's name; every advice carries it.</summary>
    public string Name { get; }

    /// <summary>Whom the policy is for.</summary>
    public string Audience { get; }

    /// <summary>Where its numbers come from.</summary>
    public string Source { get; }

    /// <summary>Bands from the highest down, covering 0 to 100 % without gap or overlap; lower ones are never less urgent.</summary>
    public IReadOnlyList<PolicyBand> Bands { get; }

    /// <summary>What symptoms mean.</summary>
    public required SymptomLevels Symptoms { get; init; }

    /// <summary>What the pulse means.</summary>
    public required PulseLimits Pulse { get; init; }

    /// <summary>What a personal target range means.</summary>
    public required TargetLevels Target { get; init; }

    /// <summary>What a measurement without a value means.</summary>
    public required NoReadingRule NoReading { get; init; }

    /// <summary>The policy as a JSON text without comments; reading it gives the same policy.</summary>
    public required string Json { get; init; }

    /// <summary>Reads a policy from JSON; comments and trailing commas are allowed, unknown members are not.</summary>
    /// <param name="utf8Json">The file's bytes, UTF-8 with or without byte order mark.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <exception cref="BadInputException">No JSON, an unknown, missing or doubled member, a number out of its limits, bands that overlap, gape or are reversed, levels that fall where they should rise.</exception>
    public static TriagePolicy Parse(ReadOnlyMemory<byte> utf8Json, string place) => PolicyFile.Parse(utf8Json, place);

    /// <summary>Reads a policy from JSON text.</summary>
    /// <param name="json">The file's text.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <exception cref="BadInputException">As for bytes.</exception>
    public static TriagePolicy Parse(string json, string place) => PolicyFile.Parse(System.Text.Encoding.UTF8.GetBytes(json), place);

    /// <summary>The band of a saturation.</summary>
    /// <param name="percent">SpO2, unrounded, percent.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100 or not a number.</exception>
    public PolicyBand BandOf(double percent)
    {
        Limits.Percent(percent, nameof(percent));
        return Bands.First(band => percent >= band.FromPercent);
    }

    private static TriagePolicy ReadEmbedded(string name)
    {
        using var stream = typeof(TriagePolicy).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The assembly has no resource {name}.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return Parse(bytes, name);
    }
}
