using PulseStream.Sessions.Events;

namespace PulseStream.Cli.Output;

/// <summary>Shows the events of sessions on standard output.</summary>
internal abstract class ResultPrinter
{
    public abstract void Print(SessionEvent told);
}
