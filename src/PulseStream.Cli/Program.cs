using PulseStream.Cli;
using Spectre.Console;

using var output = StandardOutput.Open();
using var input = Console.OpenStandardInput();
var surroundings = new Surroundings(input, output, Console.Error, TimeProvider.System)
{
    Screen = Console.IsOutputRedirected ? null : AnsiConsole.Console,
};
return await PulseStreamProgram.RunAsync(args, surroundings, CancellationToken.None);
