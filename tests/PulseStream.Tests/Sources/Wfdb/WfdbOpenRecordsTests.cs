using PulseStream.Tests.OpenRecordings;
using Xunit;

namespace PulseStream.Tests.Sources.Wfdb;

/// <summary>Records of other software, whose headers hold the sum of each signal; no part of the project.</summary>
public sealed class WfdbOpenRecordsTests
{
    // A sum that differs, or a file that ends early, would be said.
    [Theory]
    [InlineData("v102s.hea", 250, 225_000)]
    [InlineData("041s.hea", 125, 2000)]
    [InlineData("3269321_0001.hea", 125, 2000)]
    public void EverySumIsThatOfTheHeader(string name, double hz, int atMost)
    {
        var (recording, samples, said) = FileReading.Of(Path.Combine(OpenData.FolderOf("wfdb"), name));

        Assert.Equal(hz, recording.Header.Rate.Hz);
        Assert.InRange(samples.Count, 1, atMost);
        Assert.DoesNotContain(said, line => line.Contains("sum of all samples", StringComparison.Ordinal) || line.Contains("end after", StringComparison.Ordinal));
    }

    [Fact]
    public void InvalidSamplesOfARecordAreMissing()
    {
        var (_, samples, _) = FileReading.Of(Path.Combine(OpenData.FolderOf("wfdb"), "3269321_0001.hea"));

        // The record starts with 46 samples marked invalid, counted by other software.
        Assert.Equal(46, samples[0].Index);
    }
}
