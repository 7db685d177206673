using PulseStream.Tests.Whole.Cable;

namespace PulseStream.BrowserTests;

/// <summary>The program as its own process, serving a page on a free port.</summary>
internal sealed class ServedPage : IDisposable
{
    private const string Announced = "Page: ";

    private ServedPage(LiveProgram program, Uri url) => (Program, Url) = (program, url);

    public LiveProgram Program { get; }

    public Uri Url { get; }

    public static ServedPage Of(params string[] words) => Announce(new LiveProgram(["serve", .. words, "--port", "0"]));

    /// <summary>The same of lines on standard input, which stays open after them: the program tells where its page is only when it knows the recording's head.</summary>
    public static ServedPage OfLines(IEnumerable<string> lines, params string[] words)
    {
        var program = new LiveProgram(["serve", "-", .. words, "--port", "0"]);
        Feed(program, lines);
        return Announce(program);
    }

    /// <summary>The page of an instrument at the end of a cable.</summary>
    public static ServedPage OfInstrument(PulledCable cable, string layout, params string[] words) =>
        Of([cable.Reader, "--layout", LiveProgram.Layout(layout), .. words]);

    /// <summary>The instrument at its other end, in real time or faster.</summary>
    public static LiveProgram Play(PulledCable cable, string layout, int speed = 1) =>
        new("simulate", "--to", cable.Instrument, "--layout", LiveProgram.Layout(layout), "--seconds", "240", "--seed", "7", "--speed", $"{speed}");

    public void Feed(IEnumerable<string> lines) => Feed(Program, lines);

    public void Dispose() => Program.Dispose();

    private static ServedPage Announce(LiveProgram program)
    {
        try
        {
            program.WaitUntil(said => said.Output.Length > 0);
            return new ServedPage(program, new Uri(program.Output[0][Announced.Length..]));
        }
        catch
        {
            program.Dispose();
            throw;
        }
    }

    private static void Feed(LiveProgram program, IEnumerable<string> lines)
    {
        foreach (var line in lines)
        {
            program.Input.WriteLine(line);
        }

        program.Input.Flush();
    }
}
