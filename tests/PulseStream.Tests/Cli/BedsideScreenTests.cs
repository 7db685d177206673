using PulseStream.Cli;
using PulseStream.Cli.Output.Terminal;
using PulseStream.Samples;
using Spectre.Console;
using Xunit;

namespace PulseStream.Tests.Cli;

/// <summary>What a bedside reader sees in the terminal, and that nobody else sees it.</summary>
public sealed class BedsideScreenTests
{
    private const int Columns = 80;

    [Fact]
    public async Task ALiveSessionShowsNumbersWhatToDoAndTheAdvice()
    {
        var (screen, output) = await Run("slow-fall.csv", "--rate", "50");
        Assert.Contains("standard input, 50 Hz", screen, StringComparison.Ordinal);
        Assert.Contains("Waiting for the first samples.", screen, StringComparison.Ordinal);
        Assert.Contains("Stay as you are: the signal is settling.", screen, StringComparison.Ordinal);
        Assert.Contains("SpO2 96 %", screen, StringComparison.Ordinal);
        Assert.Contains("steady 5 of 5 s", screen, StringComparison.Ordinal);
        Assert.Contains("ADVICE: doctor-now", screen, StringComparison.Ordinal);
        Assert.Contains("The session has ended.", screen, StringComparison.Ordinal);
        Assert.Contains("No medical device", screen, StringComparison.Ordinal);
        Assert.Empty(output);
    }

    [Fact]
    public async Task RefusedSecondsShowNoNumbers()
    {
        var (screen, _) = await Run("fidgeting-hand.csv", "--rate", "50");
        var frames = screen.Split("refused: ").Skip(1);
        Assert.NotEmpty(frames);
        Assert.Contains("SpO2 -- %    pulse -- /min", screen, StringComparison.Ordinal);
        Assert.Contains("Rest the hand on something and keep it still.", screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--format", "ndjson")]
    [InlineData("--beats", "--quiet")]
    public async Task WhoAsksForLinesGetsLines(params string[] more)
    {
        var (screen, output) = await Run("warm-finger.csv", ["--rate", "50", .. more]);
        Assert.Empty(screen);
        Assert.NotEmpty(output);
    }

    [Fact]
    public void ABeatIsALineAndAGapIsAGap()
    {
        const int hz = 100;
        var wave = new WaveWindow(new RecordingHeader("hut", new SampleRate(hz), SampleColumns.Infrared));
        wave.See(new SampleBlock(0, Beats(0, 4 * hz)));
        wave.See(new SampleBlock(6 * hz, Beats(6 * hz, 2 * hz)));
        var rows = wave.Rows(Columns, 6, hasDots: false);
        Assert.All(rows, row => Assert.Equal(Columns, row.Length));
        Assert.All(rows, row => Assert.Equal(new string(' ', Columns / 4), row.Substring(Columns / 2, Columns / 4)));

        // A front is steep: beats go through every row but the top one, which only the first, not settled yet, may reach.
        Assert.All(rows.Skip(1), row => Assert.Contains('*', row[(Columns / 4)..(Columns / 2)]));
        Assert.All(wave.Rows(Columns, 6, hasDots: true), row => Assert.All(row, c => Assert.InRange(c, '\u2800', '\u28FF')));
    }

    [Fact]
    public void SteadyLightIsAFlatLine()
    {
        var wave = new WaveWindow(new RecordingHeader("hut", new SampleRate(50), SampleColumns.Infrared));
        wave.See(new SampleBlock(0, Enumerable.Repeat(Sample.OfLight(double.NaN, 80_000), 400).ToArray()));
        Assert.Single(wave.Rows(Columns, 5, hasDots: false), row => row.Contains('*', StringComparison.Ordinal));
    }

    private static Sample[] Beats(int from, int count) =>
        [.. Enumerable.Range(from, count).Select(n => Sample.OfLight(double.NaN, 80_000 * (1 - (0.02 * Math.Max(0, Math.Sin(2 * Math.PI * n / 90))))))];

    private static async Task<(string Screen, string Output)> Run(string recording, params string[] more)
    {
        await using var screen = new StringWriter();
        await using var output = new MemoryStream();
        await using var input = File.OpenRead(Recordings.PathOf(recording));
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(screen),
            Interactive = InteractionSupport.Yes,
            Ansi = AnsiSupport.Yes,
            ColorSystem = ColorSystemSupport.NoColors,
        });
        console.Profile.Width = Columns;

        var surroundings = new Surroundings(input, output, TextWriter.Null, new HastyClock()) { Screen = console };
        Assert.Equal(0, await PulseStreamProgram.RunAsync(["replay", "-", .. more], surroundings, CancellationToken.None));
        return (screen.ToString(), System.Text.Encoding.UTF8.GetString(output.ToArray()));
    }

    // A picture is due each time it is asked, so that none is left out.
    private sealed class HastyClock : TimeProvider
    {
        private long _ticks;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => _ticks += TimeSpan.TicksPerSecond;
    }
}
