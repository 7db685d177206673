using System.CommandLine;
using PulseStream.Sources.Live;

namespace PulseStream.Cli.Commands;

/// <summary>`ports`: lists the serial ports of this computer.</summary>
internal static class PortsCommand
{
    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var command = new Command("ports", "Lists the serial ports of this computer, one a line.");
        command.SetAction(_ =>
        {
            var names = SerialLine.Names();
            using var text = new StreamWriter(results, leaveOpen: true);
            foreach (var name in names)
            {
                text.WriteLine(name);
            }

            if (names.Count == 0)
            {
                surroundings.Error.WriteLine("No serial port is there. Plug the instrument in and run again; a pseudo-terminal is not listed, and can be named all the same.");
            }

            return ExitStatus.Done;
        });
        return command;
    }
}
