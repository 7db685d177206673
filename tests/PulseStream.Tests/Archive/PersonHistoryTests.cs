using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed class PersonHistoryTests
{
    [Fact]
    public void ReadingsOfThePersonBeforeTheInstantComeInOrderAcrossMidnightAndZones()
    {
        using var archive = new TemporaryArchive();
        Write(archive.Folder, "hut-07", Sessions.Start, 30, 93);
        Write(archive.Folder, "hut-07", Sessions.Start.AddHours(1).ToOffset(TimeSpan.FromHours(9)), 40, 92);
        Write(archive.Folder, "hut-07", Sessions.Start.AddHours(2), 0, 91);
        Write(archive.Folder, "hut-08", Sessions.Start, 10, 88);

        var past = PersonHistory.Before(archive.Folder, "hut-07", Sessions.Start.AddHours(2), 240, Whole);

        Assert.Equal([93, 92], past.Select(p => p.Reading.WholeSpo2Percent));
        Assert.Equal(Sessions.Start.AddSeconds(30), past[0].Time);
    }

    [Fact]
    public void ReadingsFromLongerAgoDoNotCount()
    {
        using var archive = new TemporaryArchive();
        Write(archive.Folder, "hut-07", Sessions.Start, 30, 93);

        Assert.Empty(PersonHistory.Before(archive.Folder, "hut-07", Sessions.Start.AddHours(5), 240, Whole));
        Assert.Empty(PersonHistory.Before(archive.Folder, "nobody", Sessions.Start.AddHours(1), 240, Whole));
    }

    [Fact]
    public void DaysThatCannotReachAreNotOpened()
    {
        using var archive = new TemporaryArchive();
        var folder = Write(archive.Folder, "hut-07", Sessions.Start, 30, 93);
        File.WriteAllText(Path.Combine(folder, "session.json"), "damaged");

        Assert.Empty(PersonHistory.Before(archive.Folder, "hut-07", Sessions.Start.AddDays(30), 240, Whole));
    }

    [Fact]
    public void ADamagedSessionIsToldAndTheOthersCount()
    {
        using var archive = new TemporaryArchive();
        var folder = Write(archive.Folder, "hut-07", Sessions.Start, 30, 93);
        Write(archive.Folder, "hut-07", Sessions.Start.AddHours(1), 30, 92);
        File.WriteAllText(Path.Combine(folder, "session.json"), "damaged");

        var told = new List<string>();
        var past = PersonHistory.Before(archive.Folder, "hut-07", Sessions.Start.AddHours(2), 240, problem => told.Add(problem.Message));

        Assert.Equal(92, Assert.Single(past).Reading.WholeSpo2Percent);
        Assert.Contains(folder, Assert.Single(told), StringComparison.Ordinal);
    }

    private static void Whole(BadInputException problem) => Assert.Fail(problem.Message);

    private static string Write(string archive, string person, DateTimeOffset start, long second, int percent)
    {
        using var writer = Sessions.Begin(archive, Sessions.Header(start: start), new("check", person));
        for (var i = 0; i <= second; i++)
        {
            writer.Append(new UnusableSecond(i, Reasons.Settling, null));
        }

        writer.Append(new Reading(second, percent, new(percent, percent - 1, percent + 1), 70, 2, 5, Reasons.None));
        writer.Seal(SampleTally.Empty);
        return writer.Folder;
    }
}
