using PulseStream.Tests.Whole.Cable;

namespace PulseStream.BrowserTests;

/// <summary>The program as its own process, serving a page on a free port.</summary>
internal sealed class ServedPage : IDisposable
{
    private const string Announced = "Page: ";

    private ServedPage(LiveProgram program)
    {
        Program = program;
        program.WaitUntil(said => said.Output.Length > 0);
        Url = new Uri(program.Output[0][Announced.Length..]);
    }

    public LiveProgram Program { get; }

    public Uri Url { get; }

    public static ServedPage Of(params string[] words) => new(new LiveProgram(["serve", .. words, "--port", "0"]));

    /// <summary>The same of lines on standard input, which stays open after them: the program tells where its page is only when it knows the recording's head.</summary>
    public static ServedPage OfLines(IEnumerable<string> lines, params string[] words)
    {
        var program = new LiveProgram(["serve", "-", .. words, "--port", "0"]);
        Feed(program, lines);
        return new ServedPage(program);
    }

    public void Feed(IEnumerable<string> lines) => Feed(Program, lines);

    public void Dispose() => Program.Dispose();

    private static void Feed(LiveProgram program, IEnumerable<string> lines)
    {
        foreach (var line in lines)
        {
            program.Input.WriteLine(line);
        }

        program.Input.Flush();
    }
}
