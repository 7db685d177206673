using PulseStream.Comparison;

namespace PulseStream.Cli.Inputs;

/// <summary>Gathers the lines of one recording.</summary>
internal sealed class RecordingResultsBuilder(string source, string judgedBy)
{
    private readonly List<AcceptedValue> _readings = [];
    private readonly List<GivenLevel> _advice = [];
    private readonly List<FingerSpan> _sittings = [];
    private long _usableSeconds;
    private (long Seconds, long Usable)? _end;
    private string? _problem;

    /// <summary>Seconds so far.</summary>
    public long Seconds { get; private set; }

    public void AddSecond(bool isUsable)
    {
        Seconds++;
        _usableSeconds += isUsable ? 1 : 0;
    }

    public void Add(AcceptedValue reading) => _readings.Add(reading);

    public void Add(GivenLevel advice) => _advice.Add(advice);

    public void Add(FingerSpan sitting) => _sittings.Add(sitting);

    public void End(long seconds, long usableSeconds) => _end = (seconds, usableSeconds);

    /// <summary>Notes the first thing that is wrong.</summary>
    public void Spoil(string problem) => _problem ??= problem;

    public RecordingResults Build() => new(source)
    {
        Readings = _readings,
        Advice = _advice,
        Sittings = _sittings,
        Seconds = _end?.Seconds ?? Seconds,
        UsableSeconds = _end?.Usable ?? _usableSeconds,
        JudgedBy = judgedBy,
        Problem = _problem,
    };
}
