using System.CommandLine;
using System.CommandLine.Invocation;
using PulseStream.Cli.Commands;
using PulseStream.Samples;

namespace PulseStream.Cli;

/// <summary>The program behind its streams: the table of commands and the one handler of what goes wrong.</summary>
public static class PulseStreamProgram
{
    // Sealing a long session takes its time; a second Ctrl-C still ends the program at once.
    private static readonly TimeSpan TimeToFinish = TimeSpan.FromMinutes(5);

    /// <summary>Runs one command.</summary>
    /// <param name="args">Words of the command line.</param>
    /// <param name="surroundings">Streams and clock.</param>
    /// <param name="cancel">Ends the command early, as Ctrl-C does.</param>
    /// <returns>The exit status.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> args, Surroundings surroundings, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(surroundings);
        using var results = new ResultStream(surroundings.Output);
        try
        {
            // Without response files: a recording may be called @night.csv.
            var parsed = CommandsFor(surroundings, results).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (parsed.Action is ParseErrorAction)
            {
                return Fail(surroundings, $"{WhatIsWrong(parsed)}. Run 'pulsestream {NameOf(parsed.CommandResult.Command)}--help' to see what it takes.");
            }

            await using var text = new StreamWriter(results) { AutoFlush = true };
            return await parsed.InvokeAsync(
                new InvocationConfiguration
                {
                    Output = text,
                    Error = surroundings.Error,
                    EnableDefaultExceptionHandler = false,
                    ProcessTerminationTimeout = TimeToFinish,
                },
                cancel);
        }
        catch (BadInputException problem)
        {
            return Fail(surroundings, problem.Message);
        }
        catch (OperationCanceledException)
        {
            return ExitStatus.Cancelled;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return Fail(surroundings, $"{problem.Message.TrimEnd('.')}. Free space or rights and run again.");
        }
        catch (Exception problem)
        {
            return Fail(surroundings, $"A fault of the program itself, not of the input: {problem.GetType().Name}, {problem.Message} Please report it with the command.");
        }
    }

    private static RootCommand CommandsFor(Surroundings surroundings, ResultStream results) =>
        new("Turns raw red and infrared samples of a finger oximeter into readings that can be believed, and the advice that follows. No medical device.")
        {
            ReplayCommand.Of(surroundings, results),
            ReadCommand.Of(surroundings, results),
            PortsCommand.Of(surroundings, results),
            SimulateCommand.Of(surroundings),
            AdviseCommand.Of(surroundings, results),
            CompareCommand.Of(surroundings, results),
            ConvertCommand.Of(surroundings, results),
            ReportCommand.Of(surroundings, results),
            SessionsCommand.Of(surroundings, results),
            ForgetCommand.Of(results),
            ServeCommand.Of(surroundings, results),
            ValidateCommand.Of(surroundings, results),
            CalibrateCommand.Of(surroundings, results),
            ResponseCommand.Of(surroundings, results),
            SweepCommand.Of(surroundings, results),
            TrendCommand.Of(surroundings, results),
        };

    // What was typed says more than what is missing because of it.
    private static string WhatIsWrong(ParseResult parsed) => parsed.UnmatchedTokens is [var first, ..]
        ? $"{first}: there is no such command or option"
        : parsed.Errors[0].Message.TrimEnd('.');

    private static string NameOf(Command command) => command is RootCommand ? "" : command.Name + " ";

    private static int Fail(Surroundings surroundings, string sentence)
    {
        surroundings.Complain(sentence);
        return ExitStatus.BadInput;
    }
}
