using PulseStream.Cli;

using var output = StandardOutput.Open();
using var input = Console.OpenStandardInput();
var surroundings = new Surroundings(input, output, Console.Error, TimeProvider.System);
return await PulseStreamProgram.RunAsync(args, surroundings, CancellationToken.None);
