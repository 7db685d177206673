using System.Runtime.Intrinsics;
using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>Gathers the light of one second: levels, end stops, dark samples, movement of the sensor.</summary>
internal sealed class LightMeter
{
    private readonly EndStops stops;
    private readonly double fullScale;
    private readonly bool hasRed;
    private readonly bool hasMore;
    private readonly Moments ambient = new();
    private readonly Moments accelerationX = new();
    private readonly Moments accelerationY = new();
    private readonly Moments accelerationZ = new();
    private Vector128<double> origin;
    private Vector128<double> sum;
    private Vector128<double> squares;
    private double ambientHighest;
    private double ambientLowest;
    private int lights;
    private int samples;

    public LightMeter(double? fullScaleCounts, double rateHz, SampleColumns columns)
    {
        fullScale = fullScaleCounts ?? double.NaN;
        hasRed = columns.HasFlag(SampleColumns.Red) && columns.HasFlag(SampleColumns.Infrared);
        hasMore = (columns & (SampleColumns.Ambient | SampleColumns.Acceleration)) != SampleColumns.None;
        stops = new(fullScale, rateHz, hasRed);
        Restart();
    }

    /// <summary>Adds samples with their lights.</summary>
    /// <param name="received">As received: saturation is judged before ambient is subtracted, afterwards it no longer shows.</param>
    public void Add(ReadOnlySpan<Sample> received)
    {
        if (received.IsEmpty)
        {
            return;
        }

        if (lights == 0)
        {
            // About the first value, which keeps small swings on a large level exact.
            origin = TwoLights.Of(received[0], hasRed);
        }

        AddRest(received);
        if (AreInner(received))
        {
            stops.Pass(received[^1]);
        }
        else
        {
            stops.Step(received);
        }

        lights += received.Length;
        samples += received.Length;
    }

    /// <summary>Adds samples of a recording without lights.</summary>
    /// <param name="received">As received.</param>
    public void AddUnlit(ReadOnlySpan<Sample> received)
    {
        AddRest(received);
        samples += received.Length;
    }

    /// <summary>The second is over: tells its light and starts the next.</summary>
    /// <param name="expected">Samples that the second should have held.</param>
    /// <param name="noiseSwing">Standard deviation of white noise in the logarithm of infrared.</param>
    public SecondLight Take(long expected, double noiseSwing)
    {
        var shift = sum / lights;
        var mean = origin + shift;
        var light = new SecondLight(
            Math.Max(0, 1 - ((double)samples / expected)),
            samples > 0 ? Math.Min(1, (double)stops.Count / samples) : 0,
            lights > 0 ? mean[0] : double.NaN,
            lights > 0 && hasRed ? mean[1] : double.NaN,
            ambient.Mean,
            ambient.Count > 0 ? ambientHighest - ambientLowest : double.NaN,
            Math.Sqrt(accelerationX.Variance + accelerationY.Variance + accelerationZ.Variance),
            lights > 0 ? Math.Sqrt(Math.Max(0, (squares[0] / lights) - (shift[0] * shift[0]))) / mean[0] : double.NaN,
            noiseSwing,
            Math.Log(fullScale / ((hasRed ? Math.Max(mean[0], mean[1]) : mean[0]) + (ambient.Count > 0 ? ambient.Mean : 0))));
        Restart();
        return light;
    }

    // Adds the lights, and tells whether all of them lie within what has been seen, as nearly all samples do: they are read from memory
    // once. A loop of its own that calls nothing keeps its sums in registers.
    private bool AreInner(ReadOnlySpan<Sample> received)
    {
        var (shift, power, about, top, bottom) = (sum, squares, origin, stops.Top, stops.Bottom);
        var areInner = Vector128<double>.AllBitsSet;
        foreach (ref readonly var sample in received)
        {
            var difference = TwoLights.Of(sample, hasRed) - about;
            shift += difference;
            power += difference * difference;
            var counts = stops.CountsOf(sample);
            areInner &= Vector128.LessThan(counts, top) & Vector128.GreaterThan(counts, bottom);
        }

        (sum, squares) = (shift, power);
        return areInner.ExtractMostSignificantBits() == 0b11;
    }

    private void AddRest(ReadOnlySpan<Sample> received)
    {
        for (var n = 0; hasMore && n < received.Length; n++)
        {
            ref readonly var sample = ref received[n];
            if (!double.IsNaN(sample.Ambient))
            {
                AddAmbient(sample.Ambient);
            }

            if (!double.IsNaN(sample.AccelerationX))
            {
                AddAcceleration(sample);
            }
        }
    }

    private void AddAmbient(double counts)
    {
        ambient.Add(counts);
        ambientHighest = Math.Max(ambientHighest, counts);
        ambientLowest = Math.Min(ambientLowest, counts);
    }

    private void AddAcceleration(in Sample sample)
    {
        accelerationX.Add(sample.AccelerationX);
        accelerationY.Add(sample.AccelerationY);
        accelerationZ.Add(sample.AccelerationZ);
    }

    private void Restart()
    {
        samples = 0;
        lights = 0;
        origin = sum = squares = default;
        ambientHighest = double.NegativeInfinity;
        ambientLowest = double.PositiveInfinity;
        stops.Restart();
        ambient.Restart();
        accelerationX.Restart();
        accelerationY.Restart();
        accelerationZ.Restart();
    }
}
