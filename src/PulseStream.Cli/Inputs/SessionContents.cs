using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;

namespace PulseStream.Cli.Inputs;

/// <summary>What the course of a person needs of one session.</summary>
internal sealed record SessionContents(string Folder)
{
    public DateTimeOffset? Start { get; private init; }

    public string? Sensor { get; private init; }

    public bool IsAfterExertion { get; private init; }

    public IReadOnlyList<Reading> Readings { get; private init; } = [];

    public IReadOnlyList<Sitting> Sittings { get; private init; } = [];

    public IReadOnlyList<OutlinedAdvice> Advice { get; private init; } = [];

    /// <summary>Why it cannot be read, as a sentence; null where it can.</summary>
    public string? Problem { get; private init; }

    public static SessionContents Read(string folder)
    {
        try
        {
            var session = ArchivedSession.Open(folder);
            var outline = session.Outline();
            return new SessionContents(folder)
            {
                Start = session.Header.Start,
                Sensor = session.Identity.Sensor,
                IsAfterExertion = session.Identity.Activity == SessionIdentity.Exertion,
                Readings = outline.Readings,
                Sittings = outline.Sittings,
                Advice = outline.Advice,
            };
        }
        catch (BadInputException problem)
        {
            return new SessionContents(folder) { Problem = problem.Message };
        }
    }
}
