using System.Runtime.ExceptionServices;
using System.Text.Json;
using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Triage;

namespace PulseStream.Plots;

/// <summary>What a picture shows of a session. Samples are kept as an envelope only, seconds and rarer things whole.</summary>
internal sealed record SessionContent
{
    /// <summary>Where it comes from.</summary>
    public required ArchivedSession Session { get; init; }

    /// <summary>The seconds, their intervals widened by the device's accuracy.</summary>
    public required IReadOnlyList<Second> Seconds { get; init; }

    /// <summary>When the beats rose, seconds since the start.</summary>
    public required IReadOnlyList<double> BeatTimes { get; init; }

    /// <summary>The accepted readings.</summary>
    public required IReadOnlyList<Reading> Readings { get; init; }

    /// <summary>The sittings.</summary>
    public required IReadOnlyList<Sitting> Sittings { get; init; }

    /// <summary>The advice.</summary>
    public required IReadOnlyList<ArchivedAdvice> Advice { get; init; }

    /// <summary>The plethysmogram, time in sample indices.</summary>
    public required Envelope Plethysmogram { get; init; }

    /// <summary>The device's stated accuracy A_rms, SpO2 percentage points; 0 where none is stated.</summary>
    public required double ArmsPercent { get; init; }

    /// <summary>The end of the time axis, seconds since the start; 1 where the session is shorter.</summary>
    public required double EndSeconds { get; init; }

    /// <summary>Reads a session.</summary>
    /// <param name="folder">The session's folder, or a file in it.</param>
    /// <exception cref="BadInputException">It is no sealed session, or a file of it was changed.</exception>
    public static SessionContent Read(string folder)
    {
        var session = ArchivedSession.Open(folder);
        var arms = ArmsOf(session.Settings);
        var seconds = session.Seconds().Select(second => Widened(second, arms)).ToArray();
        var trace = TraceOf(session);
        var lastSecond = seconds.Length == 0 ? 0 : seconds[^1].SecondIndex + 1;
        return new()
        {
            Session = session,
            Seconds = seconds,
            BeatTimes = [.. session.Beats().Select(beat => session.Header.Rate.SecondsAt(beat.RiseIndex))],
            Readings = [.. session.Readings()],
            Sittings = [.. session.Sittings()],
            Advice = [.. session.Advice()],
            Plethysmogram = trace.Envelope,
            ArmsPercent = arms,
            EndSeconds = Math.Max(1, Math.Max(lastSecond, session.Header.Rate.SecondsAt(trace.EndIndex))),
        };
    }

    private static PlethysmogramTrace TraceOf(ArchivedSession session)
    {
        var trace = new PlethysmogramTrace(session.Header);
        using var recording = session.OpenRecording();
        using (recording.Blocks(CancellationToken.None).Subscribe(trace))
        {
            if (trace.Failure is { } failure)
            {
                ExceptionDispatchInfo.Throw(failure);
            }
        }

        return trace;
    }

    private static double ArmsOf(SessionSettings settings)
    {
        var curve = JsonElement.Parse(settings.CurveJson);
        return curve.ValueKind == JsonValueKind.Object
            && curve.TryGetProperty("arms", out var arms)
            && arms.ValueKind == JsonValueKind.Number
            && arms.GetDouble() is > 0 and < 100 and var percent ? percent : 0;
    }

    private static Second Widened(Second second, double arms) => second.Usable is { Spo2: { } spo2 } usable
        ? usable with { Spo2 = DeviceAccuracy.Widen(spo2, arms) }
        : second;
}
