using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Tests.Samples;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>What a stream costs does not grow with its age or its gaps.</summary>
public sealed class StreamCostTests
{
    private const int LargestBytes = 32 * 1024;
    private const int HourSeconds = 3600;

    // A reading told, and what it belongs to.
    private const int LargestBytesPerReading = 200;

    // A third of what an oximeter shows as its last digit, in 3600 seconds of a noisy finger.
    private const double PercentTolerance = 0.3;

    // The same hour read at another place of the day: rounding of its sums.
    private const double DriftTolerance = 1e-9;
    private const double PulseTolerance = 1;

    [Theory]
    [InlineData(100)]
    [InlineData(250)]
    public void AStreamKeepsLessThan32Kilobytes(double hz)
    {
        const int streams = 100;
        var options = new ReadingOptions();
        var header = HeaderAt(hz);
        var room = new WindowRoom(new SignalDesign(header.Rate, options.Signal));
        var block = new SampleBlock(0, Present(new Finger { RateHz = hz, Seconds = 20 }));
        var listener = new Listener();
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var k = 0; k < streams; k++)
        {
            new FingerReader(header, CalibrationCurve.TextbookLine, options, room).Read(block, listener);
        }

        // All that a reader has asked for up to its first reading: it cannot keep more.
        Assert.InRange((GC.GetAllocatedBytesForCurrentThread() - before) / streams, 1, LargestBytes);
        Assert.Equal(streams, listener.Readings);
    }

    [Theory]
    [InlineData(SampleColumns.Red | SampleColumns.Infrared)]
    [InlineData(SampleColumns.Infrared)]
    public void AReaderThatHasComeToRestAllocatesNothing(SampleColumns columns)
    {
        const int hz = 100, seconds = 240, steadySeconds = 60;
        var samples = Present(new Finger { RateHz = hz, Seconds = seconds });
        var (usable, readings) = (0, 0);
        var listener = new Listener();
        Assert.Equal(0, Allocated.LeastBytes(() =>
        {
            listener = new();
            var reader = new FingerReader(new("test", new SampleRate(hz), columns), CalibrationCurve.TextbookLine, new ReadingOptions());
            reader.Read(new(0, samples.AsMemory(0, steadySeconds * hz)), listener);
            (usable, readings) = (listener.Usable, listener.Readings);
            return () =>
            {
                for (var at = steadySeconds * hz; at < samples.Length; at += hz / 10)
                {
                    reader.Read(new(at, samples.AsMemory(at, hz / 10)), listener);
                }
            };
        }));
        Assert.Equal(seconds - steadySeconds, listener.Usable - usable);
        Assert.Equal(0, listener.Readings - readings);
    }

    [Fact]
    public void StreamsThatShareARoomReadAsIfAlone()
    {
        Finger[] fingers = [new() { PulsePerMinute = 60, Seed = 1 }, new() { PulsePerMinute = 110, Seed = 2, Spo2 = _ => 88 }, new() { PerfusionPercent = 0.3, Seed = 3 }];
        var streams = Array.ConvertAll(fingers, finger => finger.Samples());
        var options = new ReadingOptions();
        var room = new WindowRoom(new SignalDesign(new SampleRate(100), options.Signal));
        var heard = Array.ConvertAll(fingers, _ => new Heard());
        var readers = Array.ConvertAll(fingers, _ => new FingerReader(HeaderAt(100), CalibrationCurve.TextbookLine, options, room));
        for (var at = 0; at < streams[0].Length; at += 10)
        {
            for (var k = 0; k < readers.Length; k++)
            {
                readers[k].Read(new(at, Array.ConvertAll(streams[k][at..(at + 10)], s => s!.Value)), heard[k]);
            }
        }

        for (var k = 0; k < readers.Length; k++)
        {
            readers[k].Finish(heard[k]);
            Assert.Equal(Heard.Of(100, streams[k]).Events, heard[k].Events);
        }
    }

    [Fact]
    public void ARoomForAnotherRateIsRefused()
    {
        var options = new ReadingOptions();
        var room = new WindowRoom(new SignalDesign(new SampleRate(50), options.Signal));
        Assert.Throws<ArgumentException>("room", () => new FingerReader(HeaderAt(100), CalibrationCurve.TextbookLine, options, room));
    }

    [Fact]
    public void AGapOfHoursCostsItsSecondsAndNoMore()
    {
        const int gapSeconds = 6 * HourSeconds;
        var samples = Present(new Finger { Seconds = 20 });
        var signal = new FingerSignal(new SignalDesign(new SampleRate(100), new()), SampleColumns.Red | SampleColumns.Infrared, null);
        Feed(signal, samples);
        var calls = 0;
        var start = signal.NextIndex;
        for (var after = start + (gapSeconds * 100L); signal.TrySkip(after, out var second); calls++)
        {
            Assert.Equal(1, second.Light.MissingShare);
            Assert.Equal(0, second.Fit.WindowSeconds);
        }

        Assert.Equal(gapSeconds, calls);
        Assert.Equal(start + (gapSeconds * 100L), signal.NextIndex);
    }

    [Fact]
    public void ADayReadsAtItsEndAsAtItsStartAndAllocatesOnlyWhatItTells()
    {
        const int hz = 25, hours = 24;
        var hour = Present(new Finger { RateHz = hz, Seconds = HourSeconds });
        var reader = new FingerReader(HeaderAt(hz), CalibrationCurve.TextbookLine, new ReadingOptions());
        var listeners = new Listener[hours];
        var bytes = new long[hours];
        for (var turn = 0; turn < hours; turn++)
        {
            listeners[turn] = new();
            var block = new SampleBlock(turn * (long)hour.Length, hour);
            var before = GC.GetAllocatedBytesForCurrentThread();
            reader.Read(block, listeners[turn]);
            bytes[turn] = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Assert.InRange(bytes[^1], 0, LargestBytesPerReading * listeners[^1].Readings);
        Assert.Equal(listeners[1].Usable, listeners[^1].Usable);
        Assert.All(listeners[1..], hourHeard => Assert.InRange(hourHeard.WorstPercent, 0, PercentTolerance));
        Assert.All(listeners[1..], hourHeard => Assert.InRange(hourHeard.WorstPulse, 0, PulseTolerance));
        Assert.Equal(listeners[1].WorstPercent, listeners[^1].WorstPercent, DriftTolerance);
    }

    private static RecordingHeader HeaderAt(double hz) => new("test", new SampleRate(hz), SampleColumns.Red | SampleColumns.Infrared);

    private static Sample[] Present(Finger finger) => Array.ConvertAll(finger.Samples(), s => s!.Value);

    private static void Feed(FingerSignal signal, ReadOnlySpan<Sample> samples)
    {
        while (signal.TryRead(ref samples, out _))
        {
        }
    }

    private sealed class Listener : IReadingObserver
    {
        public int Usable { get; private set; }

        public int Readings { get; private set; }

        public double WorstPercent { get; private set; }

        public double WorstPulse { get; private set; }

        public void OnBeat(in Beat beat)
        {
        }

        public void OnSecond(in Second second)
        {
            if (second.Usable is { } usable)
            {
                Usable++;
                WorstPercent = Math.Max(WorstPercent, Math.Abs((usable.Spo2?.Percent ?? double.NaN) - 97));
                WorstPulse = Math.Max(WorstPulse, Math.Abs(usable.PulseRatePerMinute!.Value - 72));
            }
        }

        public void OnReading(Reading reading) => Readings++;

        public void OnSitting(Sitting sitting)
        {
        }
    }
}
