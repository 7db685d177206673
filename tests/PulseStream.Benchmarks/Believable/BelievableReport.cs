using System.Globalization;
using PulseStream.Readings;

namespace PulseStream.Benchmarks.Believable;

/// <summary>Prints what the core reaches on each kind of stream, and what each method is good for.</summary>
internal static class BelievableReport
{
    public static int Print()
    {
        var options = new ReadingOptions();
        Console.WriteLine("# What the core reaches, and what each of its methods is good for");
        Console.WriteLine();
        Console.WriteLine("Made by `dotnet run -c Release --project tests/PulseStream.Benchmarks -- believable > tests/believable.md`, from twelve");
        Console.WriteLine("made-up streams of a minute a row, the same ones each time. No claim of any oximeter's accuracy. Errors are points of SpO2");
        Console.WriteLine("and pulse per minute, against the simulator's truth of the same eight seconds. Usable: of seconds without a disturbance in");
        Console.WriteLine("them, from 15 s on. Given: of seconds with one, with a finger in the clip from 15 s on. Cause: refused seconds with a");
        Console.WriteLine("disturbance, from the first whole window on, whose named reason is right. A second given where there is no finger counts");
        Console.WriteLine("as 100 points wrong.");
        Console.WriteLine();
        Console.WriteLine("| stream | usable % | given % | SpO2 95th | worst | bias | pulse 95th | halved or doubled | first reading s | readings | off > 2 | off > 3 | cause % | interval holds % | width |");
        Console.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        var reached = new Dictionary<StreamRow, Figures>();
        foreach (var row in Rows.All)
        {
            var f = reached[row] = row.Measure(options);
            Console.WriteLine(
                $"| {row.Name} | {Text(f.UsablePercent, 1)} | {Text(f.GivenPercent, 1)} | {Text(f.Error95, 2)} | {Text(f.Worst, 2)} | {Text(f.Bias, 2)} | {Text(f.PulseError95, 2)} | {f.Halved} | {(f.FirstReadingSecond == int.MaxValue ? "–" : f.FirstReadingSecond)} | {f.Readings} | {f.WrongBy2} | {f.WrongBy3} | {Text(f.NamedRightPercent, 0)} | {Text(f.HoldsPercent, 1)} | {Text(f.Width, 2)} |");
        }

        Console.WriteLine();
        Console.WriteLine("## Each method taken away");
        Console.WriteLine();
        Console.WriteLine("| method | streams | figure | with | without |");
        Console.WriteLine("| --- | --- | --- | ---: | ---: |");
        foreach (var method in Methods.All)
        {
            var without = method.Row.Measure(method.Without(options));
            Console.WriteLine($"| {method.Name} | {method.Row.Name} | {method.Figure} | {Text(method.Read(reached[method.Row]), 2)} | {Text(method.Read(without), 2)} |");
        }

        return 0;
    }

    private static string Text(double value, int digits) =>
        double.IsFinite(value) ? value.ToString("F" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) : "–";
}
