using System.Text;
using PulseStream.Accuracy;
using PulseStream.Accuracy.Criteria;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Accuracy;

public sealed class CriteriaTests
{
    [Theory]
    [InlineData(10, 2)]
    [InlineData(13, 2)]
    [InlineData(14, 3)]
    [InlineData(20, 3)]
    [InlineData(24, 4)]
    public void DarklyPigmentedSubjectsAreTwoOrAShareOfThePool(int subjects, int least)
    {
        var pairs = SimulatedStudies.Of(subjects, 3, 1, subject => (subject == 0 ? "dark" : "light", 0));

        var judged = Judged(pairs, CriterionMeasure.DarkSubjects).Single();

        Assert.Equal((least, 1), (judged.Limit, judged.Value));
        Assert.False(judged.IsMet);
    }

    [Fact]
    public void TheSiteDecidesWhichLimitIsInForce()
    {
        var pairs = SimulatedStudies.Of(10, 3, 1).Select(pair => pair with { Site = "Forehead" }).ToArray();

        Assert.Equal([4.0, 3.5], Judged(pairs, CriterionMeasure.Arms).Select(judged => judged.Limit));
    }

    [Fact]
    public void ADraftIsToldAndNeverDecides()
    {
        var statement = AccuracyStatement.Of(SimulatedStudies.Of(12, 30, 1, subject => (subject < 4 ? "dark" : "light", 0.0)), Quantity.Saturation, CriteriaFile.Default);

        Assert.True(statement.IsMet);
        Assert.Contains(statement.NotInForce, judged => judged.Criterion.Limit == 3000 && !judged.IsMet);
    }

    [Fact]
    public void ARangeIncludesItsEnds()
    {
        PairedReading[] pairs = [new("a", 70, 71), new("a", 100, 99), new("b", 69.9, 90), new("b", 85, 85)];

        Assert.Equal(3, Judged(pairs, CriterionMeasure.Pairs).Single().Value);
    }

    [Theory]
    [InlineData("[]", "expected an object")]
    [InlineData("""{"name":"x"}""", "criteria")]
    [InlineData("""{"name":"x","criteria":[{"name":"y","measure":"arms","source":"s"}]}""", "either 'most' or 'least'")]
    [InlineData("""{"name":"x","criteria":[{"name":"y","measure":"arms","most":1,"least":2,"source":"s"}]}""", "either 'most' or 'least'")]
    [InlineData("""{"name":"x","criteria":[{"name":"y","measure":"rms","most":1,"source":"s"}]}""", "expected one of arms")]
    [InlineData("""{"name":"x","criteria":[{"name":"y","measure":"arms","most":1,"source":"s","limit":2}]}""", "unknown")]
    [InlineData("""{"name":"x","criteria":[{"name":"y","measure":"arms","most":1,"from":90,"to":80,"source":"s"}]}""", "criteria[0].to")]
    public void AWrongFileNamesTheMember(string json, string words)
    {
        var problem = Assert.Throws<BadInputException>(() => CriteriaFile.Parse(Encoding.UTF8.GetBytes(json), "own.json"));

        Assert.StartsWith("own.json", problem.Message, StringComparison.Ordinal);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
    }

    private static IEnumerable<JudgedCriterion> Judged(PairedReading[] pairs, CriterionMeasure measure) =>
        AccuracyStatement.Of(pairs, Quantity.Saturation, CriteriaFile.Default).Criteria.Where(judged => judged.Criterion.Measure == measure);
}
