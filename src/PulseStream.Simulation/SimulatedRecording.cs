using PulseStream.Samples;
using PulseStream.Simulation.Blood;
using PulseStream.Simulation.Chance;
using PulseStream.Simulation.Episodes;
using PulseStream.Simulation.Light;

namespace PulseStream.Simulation;

/// <summary>
/// The recording of a scenario and the truth about it. Each sequence can be read any number of times and is made while it is
/// read, in constant memory; the same scenario gives the same values whatever the block size.
/// </summary>
/// <remarks>
/// Chance is SplitMix64, random access (<see cref="Scenario.Seed"/>). Sines and exponentials are those of the platform: another
/// one may differ by one count here and there.
/// </remarks>
/// <param name="scenario">What to make.</param>
public sealed class SimulatedRecording(Scenario scenario)
{
    private readonly SplitMix _missing = new(scenario.Seed, Streams.Missing);
    private readonly SplitMix _repeat = new(scenario.Seed, Streams.Repeat);

    /// <summary>Source name "simulated", rate, columns and the converter's full scale.</summary>
    public RecordingHeader Header { get; } = new(
        "simulated",
        scenario.Rate,
        SampleColumns.Red | SampleColumns.Infrared
            | (scenario.WithAmbientColumn ? SampleColumns.Ambient : SampleColumns.None)
            | (scenario.WithAcceleration ? SampleColumns.Acceleration : SampleColumns.None),
        new Converter(scenario.Bits).FullScale);

    /// <summary>The samples as a reader of the recording would hand them on: no repeats, the counter unwrapped, gaps as jumps.</summary>
    /// <param name="samplesPerBlock">Largest number of samples in a block, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public IEnumerable<SampleBlock> Blocks(int samplesPerBlock)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samplesPerBlock, 1);
        return MakeBlocks(samplesPerBlock);
    }

    /// <summary>The rows as a file holds them: counter wrapped, repeats written twice, missing samples left out.</summary>
    public IEnumerable<RecordedRow> Rows()
    {
        var detector = new Detector(scenario);
        var counterMask = (1L << scenario.CounterBits) - 1;
        for (var index = 0L; index < scenario.SampleCount; index++)
        {
            if (IsMissing(index))
            {
                continue;
            }

            var row = new RecordedRow(index & counterMask, scenario.Rate.SecondsAt(index), detector.At(index));
            yield return row;
            if (_repeat.Uniform(index) < scenario.RepeatShare)
            {
                yield return row;
            }
        }
    }

    /// <summary>The truth for each whole second of the recording.</summary>
    public IEnumerable<TruthSecond> Truth()
    {
        var seconds = scenario.Rate.SecondOf(scenario.SampleCount);
        for (var second = 0L; second < seconds; second++)
        {
            yield return TruthOf(second);
        }
    }

    /// <summary>The beats that show in the light, in order; none while no finger is in place.</summary>
    public IEnumerable<TrueBeat> Beats() =>
        BeatTimes.Of(scenario)
            .Select(b => new TrueBeat(b.Seconds * scenario.TrueOverStated, b.IntervalSeconds * scenario.TrueOverStated))
            .SkipWhile(b => b.Seconds < 0)
            .TakeWhile(b => b.Seconds < scenario.DurationSeconds)
            .Where(b => HasBlood(PlacementIn(b.Seconds, b.Seconds)));

    private IEnumerable<SampleBlock> MakeBlocks(int samplesPerBlock)
    {
        var detector = new Detector(scenario);
        var index = 0L;
        while (index < scenario.SampleCount)
        {
            if (IsMissing(index))
            {
                index++;
                continue;
            }

            var length = RunLength(index, samplesPerBlock);
            var samples = new Sample[length];
            for (var i = 0; i < length; i++)
            {
                samples[i] = detector.At(index + i);
            }

            yield return new SampleBlock(index, samples);
            index += length;
        }
    }

    private int RunLength(long index, int longest)
    {
        var length = 1;
        while (length < longest && index + length < scenario.SampleCount && !IsMissing(index + length))
        {
            length++;
        }

        return length;
    }

    private bool IsMissing(long index) =>
        (scenario.MissingShare > 0 && _missing.Uniform(index) < scenario.MissingShare)
        || (scenario.Episodes.Count > 0 && IsInGap(scenario.SecondsAt(index)));

    private bool IsInGap(double seconds)
    {
        for (var i = 0; i < scenario.Episodes.Count; i++)
        {
            if (scenario.Episodes[i] is GapEpisode gap && seconds >= gap.FromSeconds && seconds < gap.ToSeconds)
            {
                return true;
            }
        }

        return false;
    }

    private TruthSecond TruthOf(long second)
    {
        var middle = (second + 0.5) / scenario.TrueOverStated;
        var placement = PlacementIn(second, second + 1);
        var disturbances = scenario.Episodes.Where(e => Touches(e, second, second + 1)).Aggregate(
            scenario.MissingShare > 0 ? Disturbances.Missing : Disturbances.None,
            (all, episode) => all | episode.Disturbance);
        var blood = HasBlood(placement);
        return new TruthSecond(
            second,
            blood ? scenario.Spo2.At(middle) : double.NaN,
            blood ? scenario.Pulse.At(middle) : double.NaN,
            blood ? scenario.Perfusion.At(middle) : double.NaN,
            placement,
            disturbances);
    }

    private FingerPlacement PlacementIn(double from, double to) =>
        scenario.Episodes.Where(e => Touches(e, from, to)).Select(e => e.Placement).DefaultIfEmpty().Max();

    private bool Touches(Episode episode, double from, double to) =>
        episode.Overlaps(from / scenario.TrueOverStated, to / scenario.TrueOverStated);

    private static bool HasBlood(FingerPlacement placement) => placement < FingerPlacement.Lifeless;
}
