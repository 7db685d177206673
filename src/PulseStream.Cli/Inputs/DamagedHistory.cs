using PulseStream.Samples;

namespace PulseStream.Cli.Inputs;

/// <summary>Earlier sessions that cannot be looked back on. A damaged one keeps nobody from being measured, and each is told once.</summary>
/// <param name="say">Hears of them; on any thread.</param>
internal sealed class DamagedHistory(Action<string> say)
{
    private readonly Lock _lock = new();
    private readonly HashSet<string> _told = new(StringComparer.Ordinal);

    /// <summary>Tells of one.</summary>
    public void Tell(BadInputException problem)
    {
        lock (_lock)
        {
            if (_told.Add(problem.Message))
            {
                say($"{problem.Message} Advice does not look back on this session.");
            }
        }
    }
}
