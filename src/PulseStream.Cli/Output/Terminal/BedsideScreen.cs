using PulseStream.Samples;
using PulseStream.Sessions.Events;
using Spectre.Console;

namespace PulseStream.Cli.Output.Terminal;

/// <summary>Keeps a view on the terminal while a session runs.</summary>
/// <param name="console">The terminal.</param>
/// <param name="clock">Says when the picture is due again.</param>
/// <param name="view">What is shown.</param>
internal sealed class BedsideScreen(IAnsiConsole console, TimeProvider clock, BedsideView view)
{
    // Faster than a wave can be followed by eye in characters, slow enough for a line of 9600 baud to the terminal.
    private static readonly TimeSpan DrawnEvery = TimeSpan.FromMilliseconds(100);

    private readonly Lock gate = new();
    private LiveDisplayContext? live;
    private long drawnAt;

    /// <summary>Shows the view while something runs, and leaves its last picture standing.</summary>
    /// <param name="run">The session.</param>
    public void Run(Action run) => console
        .Live(view.Picture(console.Profile.Width, console.Profile.Capabilities.Unicode))
        .Overflow(VerticalOverflow.Crop)
        .Start(context =>
        {
            live = context;
            try
            {
                run();
            }
            finally
            {
                Draw();
                live = null;
            }
        });

    /// <summary>Takes the samples of a block.</summary>
    public void See(SampleBlock block)
    {
        lock (gate)
        {
            view.See(block);
            if (clock.GetElapsedTime(drawnAt) >= DrawnEvery)
            {
                Draw();
            }
        }
    }

    /// <summary>Takes what the session tells.</summary>
    public void Take(SessionEvent told)
    {
        lock (gate)
        {
            view.Take(told);
        }
    }

    /// <summary>How it stands with the line, drawn at once.</summary>
    public void Say(string line)
    {
        lock (gate)
        {
            view.Say(line);
            Draw();
        }
    }

    private void Draw()
    {
        drawnAt = clock.GetTimestamp();
        live?.UpdateTarget(view.Picture(console.Profile.Width, console.Profile.Capabilities.Unicode));
    }
}
