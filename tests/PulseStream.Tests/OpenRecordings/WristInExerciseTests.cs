using PulseStream.Readings;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.OpenRecordings;

/// <summary>
/// A wrist in exercise, one green light and its acceleration, against the ECG: what moves is refused, not guessed. Recordings: Jarchi and
/// Casson, Data 2(1), 1 (2017), PhysioNet, doi:10.3390/data2010001.
/// </summary>
public sealed class WristInExerciseTests
{
    private const double RateHz = 256;

    // A rate further off than this is wrong: 10 % at the rates of exercise (common practice).
    private const double WrongPerMinute = 10;

    [Theory]
    [InlineData("s1-walk")]
    [InlineData("s1-low-resistance-bike")]
    [InlineData("s1-high-resistance-bike")]
    public void MovementIsRefusedRatherThanRead(string recording)
    {
        var columns = OpenData.Columns(Path.Combine("wrist-exercise", recording + ".csv"));
        var heart = RPeaks.Times(columns[1], RateHz).ToArray();
        var found = OpenData.Run(RateHz, SampleColumns.Infrared | SampleColumns.Acceleration, columns[2].Select((p, n) => Moving(p, columns, n)));
        var given = found.Seconds.Select(s => s.Usable).OfType<UsableSecond>().Where(s => s.PulseRatePerMinute is not null).ToArray();
        var errors = given.Select(s => Math.Abs(s.PulseRatePerMinute!.Value - RateBefore(heart, s.SecondIndex + 1))).ToArray();
        var wrong = errors.Count(e => e > WrongPerMinute);
        var said = $"{given.Length} of {found.Seconds.Count} seconds, mean error {errors.DefaultIfEmpty().Average():F1} /min, {wrong} wrong";
        TestContext.Current.TestOutputHelper?.WriteLine(said);
        Assert.True(wrong == 0, said);
    }

    internal static Sample Moving(double light, double[][] columns, int n) => Sample.OfLight(double.NaN, light) with
    {
        AccelerationX = columns[3][n],
        AccelerationY = columns[4][n],
        AccelerationZ = columns[5][n],
    };

    private static double RateBefore(double[] heart, double end)
    {
        var beats = heart.Where(t => t >= end - 8 && t < end).ToArray();
        return 60 * (beats.Length - 1) / (beats[^1] - beats[0]);
    }
}
