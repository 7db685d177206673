using PulseStream.Course;

namespace PulseStream.Benchmarks;

/// <summary>Prints how often the change detector of `trend` is wrong, and how soon it finds a fall, on invented persons.</summary>
internal static class CourseDetection
{
    private const int Persons = 2000;
    private const int SteadyDays = 100;
    private const int ValuesPerDay = 3;

    public static int Print()
    {
        var steady = Enumerable.Range(0, Persons).Sum(seed => ChangeDetector.Changes(Values(seed, SteadyDays, fallFromDay: null), new ChangeOptions()).Count);
        Console.WriteLine($"steady, deviation 1: {(double)steady / Persons:F3} false alarms in 100 person-days");
        foreach (var day in new[] { 2, 3, 5, 10, 20 })
        {
            Console.WriteLine($"fall of 3 points over 48 h after {day} days: {100.0 * Enumerable.Range(0, Persons).Count(seed => IsFound(seed, day)) / Persons:F1} of 100 found within 24 h of its end");
        }

        return 0;
    }

    // Found: a fall that begins before and is found between the fall's beginning and a day after its end.
    private static bool IsFound(int seed, int day)
    {
        var points = Values(seed, day + 3, day);
        var begin = points[0].Time.AddDays(day);
        return ChangeDetector.Changes(points, new ChangeOptions()).Any(change => change.SizePoints < 0 && change.Found > begin && change.Found <= begin.AddDays(3));
    }

    private static List<CoursePoint> Values(int seed, int days, int? fallFromDay)
    {
        var (random, start) = (new Random(seed), new DateTimeOffset(2026, 3, 1, 6, 0, 0, TimeSpan.FromHours(1)));
        return
        [
            .. Enumerable.Range(0, (days * ValuesPerDay) + 1).Select(i =>
            {
                var day = (double)i / ValuesPerDay;
                var fall = fallFromDay is { } from ? 3 * Math.Clamp((day - from) / 2, 0, 1) : 0;
                return new CoursePoint(start.AddDays(day), 96 - fall + Normal(random));
            }),
        ];
    }

    // Box and Muller 1958.
    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
