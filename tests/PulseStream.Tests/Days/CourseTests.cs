using System.Globalization;
using PulseStream.Accuracy.Statistics;
using PulseStream.Course;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Days;

public sealed class CourseTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 6, 0, 0, TimeSpan.FromHours(1));
    private static readonly ChangeOptions Usual = new();

    public static TheoryData<double, double, double> Table { get; } = ReadTable();

    [Theory]
    [MemberData(nameof(Table))]
    public void TheMarkovChainGivesTheRunLengthsOfTheTable(double limit, double shift, double printed)
    {
        // Three significant digits are printed.
        var lastDigit = Math.Pow(10, Math.Floor(Math.Log10(printed)) - 2);

        Assert.Equal(printed, RunLengths.TwoSided(0.5, limit, shift), 0.6 * lastDigit);
    }

    [Theory]
    [InlineData(5, 0)]
    [InlineData(5, 1)]
    [InlineData(5, 2)]
    [InlineData(5, 3)]
    [InlineData(4, 0)]
    [InlineData(4, 1)]
    [InlineData(4, 2)]
    public void OurSumsRunAsLongAsTheMarkovChain(double limit, double shift)
    {
        var expected = RunLengths.TwoSided(0.5, limit, shift);
        var random = new Random(1);
        var runs = shift == 0 ? 3000 : 10_000;

        var mean = Enumerable.Range(0, runs).Average(_ => RunLength(random, limit, shift));

        // Three standard errors of a geometric run length.
        Assert.InRange(mean, expected - (3 * expected / Math.Sqrt(runs)), expected + (3 * expected / Math.Sqrt(runs)));
    }

    [Fact]
    public void ASteadyPersonHasAFalseAlarmInFewerThanOneOfAHundredDays()
    {
        const int Persons = 300;

        var alarms = Enumerable.Range(0, Persons).Sum(seed => ChangeDetector.Changes(Values(seed, 100, _ => 96, 1), Usual).Count);

        Assert.InRange((double)alarms / Persons, 0.2, 1);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void AFallOfThreePointsOverTwoDaysIsFoundWithinADay(int day)
    {
        const int Persons = 400;

        var found = Enumerable.Range(0, Persons).Count(seed =>
        {
            var changes = ChangeDetector.Changes(Values(seed, day + 3, Fall(day), 1), Usual);
            return changes.Any(change => change.SizePoints < 0 && change.Found > Start.AddDays(day) && change.Found <= Start.AddDays(day + 3));
        });

        Assert.InRange(found, 0.95 * Persons, Persons);
    }

    [Fact]
    public void AQuietFallIsToldWithItsBeginningEndAndSize()
    {
        var course = PersonCourse.Of(Values(1, 14, Fall(7), 0.1), Usual);

        var change = Assert.Single(course.Changes);
        Assert.InRange(change.SizePoints, -3.2, -2.8);
        Assert.InRange((change.From - Start.AddDays(7)).TotalHours, -9, 9);
        Assert.InRange((change.To - Start.AddDays(9)).TotalHours, -9, 9);
        Assert.InRange(course.Baseline.Percent, 95.9, 96.1);
        Assert.True(course.Baseline.LowPercent < 96 && course.Baseline.HighPercent > 96);
    }

    [Fact]
    public void AfterAFallWhatWasUsualStaysUsualAndARecoveryIsARise()
    {
        var course = PersonCourse.Of(Values(1, 24, day => day < 8 ? 97 : day < 15 ? 93 : 97, 0.3), Usual);

        Assert.Equal([-1, 1], course.Changes.Select(change => Math.Sign(change.SizePoints)));
        Assert.InRange(course.Baseline.Percent, 96.7, 97.3);
    }

    [Fact]
    public void OneOddReadingIsNoChange()
    {
        var points = Values(1, 10, _ => 96, 0.3).ToList();
        points[15] = points[15] with { Spo2Percent = 85 };

        Assert.Empty(PersonCourse.Of(points, Usual).Changes);
    }

    [Fact]
    public void TheLastReadingIsHeldAgainstWhatWasUsualBeforeIt()
    {
        var points = Enumerable.Range(0, 4).Select(day => new CoursePoint(Start.AddDays(day), day < 3 ? 97 : 84)).ToList();

        Assert.Equal(97, PersonCourse.Of(points, Usual).Baseline.Percent, 1e-9);
    }

    [Fact]
    public void AReadingLongAfterAllOthersIsItsOwnBaseline()
    {
        CoursePoint[] points = [new(Start, 97), new(Start.AddDays(90), 93)];

        Assert.Equal(93, PersonCourse.Of(points, Usual).Baseline.Percent);
    }

    [Fact]
    public void ManyReadingsInOneEveningAreOneEvening()
    {
        var points = Values(1, 10, _ => 96, 0.3).Concat(Enumerable.Range(0, 20).Select(i => new CoursePoint(Start.AddDays(11).AddMinutes(i), 93))).ToList();

        Assert.Empty(PersonCourse.Of(points, Usual).Changes);
    }

    [Fact]
    public void ASensorThatChangedMeanwhileIsSaid()
    {
        var points = Values(1, 14, Fall(7), 0.1).Select(point => point with { Sensor = point.Time < Start.AddDays(8) ? "clip-1" : "clip-2" }).ToList();

        Assert.True(Assert.Single(PersonCourse.Of(points, Usual).Changes).IsOtherSensor);
    }

    [Theory]
    [InlineData(1, 12.706)]
    [InlineData(5, 2.571)]
    [InlineData(10, 2.228)]
    [InlineData(16, 2.119905)]
    [InlineData(84, 1.988610)]
    public void StudentsQuantilesAreThoseOfTheTables(int degrees, double table) =>
        Assert.Equal(table, StudentT.TwoSided95(degrees), 0.0005);

    private static TheoryData<double, double, double> ReadTable()
    {
        var data = new TheoryData<double, double, double>();
        foreach (var line in File.ReadLines(Path.Combine(Recordings.Root, "tests/vectors/cusum/run-lengths.csv")).Skip(1))
        {
            var numbers = line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray();
            data.Add(4, numbers[0], numbers[1]);
            data.Add(5, numbers[0], numbers[2]);
        }

        return data;
    }

    private static Func<double, double> Fall(int day) => at => 96 - (3 * Math.Clamp((at - day) / 2, 0, 1));

    private static List<CoursePoint> Values(int seed, int days, Func<double, double> level, double deviation)
    {
        var random = new Random(seed);
        return [.. Enumerable.Range(0, (days * 3) + 1).Select(i => new CoursePoint(Start.AddDays(i / 3.0), level(i / 3.0) + (deviation * Normal(random))))];
    }

    private static int RunLength(Random random, double limit, double shift)
    {
        var (up, down) = (new Cusum(0.5, limit), new Cusum(0.5, limit));
        for (var length = 1; ; length++)
        {
            var score = shift + Normal(random);
            up.Add(score);
            down.Add(-score);
            if (up.IsBeyond || down.IsBeyond)
            {
                return length;
            }
        }
    }

    // Box and Muller 1958.
    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
