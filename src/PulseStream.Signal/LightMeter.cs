using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>Gathers the light of one second: levels, end stops, dark samples, movement of the sensor.</summary>
internal sealed class LightMeter
{
    private readonly EndStop redStop;
    private readonly EndStop infraredStop;
    private readonly double fullScale;
    private readonly bool hasRed;
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

    public LightMeter(double? fullScaleCounts, double rateHz, bool hasRed)
    {
        fullScale = fullScaleCounts ?? double.NaN;
        redStop = new(fullScale, rateHz);
        infraredStop = new(fullScale, rateHz);
        this.hasRed = hasRed;
        Restart();
    }

    /// <summary>Adds samples with their lights.</summary>
    /// <param name="received">As received: saturation is judged before ambient is subtracted, afterwards it no longer shows.</param>
    public void Add(ReadOnlySpan<Sample> received)
    {
        if (lights == 0 && !received.IsEmpty)
        {
            // About the first value, which keeps small swings on a large level exact.
            origin = TwoLights.Of(received[0], hasRed);
        }

        foreach (ref readonly var sample in received)
        {
            AddRest(sample);
            infraredStop.Step(sample.Infrared);
            redStop.Step(sample.Red);
        }

        // A loop of its own that calls nothing keeps its sums in registers.
        var (shift, power) = (sum, squares);
        foreach (ref readonly var sample in received)
        {
            var difference = TwoLights.Of(sample, hasRed) - origin;
            shift += difference;
            power += difference * difference;
        }

        (sum, squares) = (shift, power);
        lights += received.Length;
        samples += received.Length;
    }

    /// <summary>Adds samples of a recording without lights.</summary>
    /// <param name="received">As received.</param>
    public void AddUnlit(ReadOnlySpan<Sample> received)
    {
        foreach (ref readonly var sample in received)
        {
            AddRest(sample);
        }

        samples += received.Length;
    }

    /// <summary>The second is over: tells its light and starts the next.</summary>
    /// <param name="expected">Samples that the second should have held.</param>
    /// <param name="noiseSwing">Standard deviation of white noise in the logarithm of infrared.</param>
    public SecondLight Take(long expected, double noiseSwing)
    {
        var clipped = Math.Max(redStop.Count, infraredStop.Count);
        var shift = sum / lights;
        var mean = origin + shift;
        var light = new SecondLight(
            Math.Max(0, 1 - ((double)samples / expected)),
            samples > 0 ? Math.Min(1, (double)clipped / samples) : 0,
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

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void AddRest(in Sample sample)
    {
        if (!double.IsNaN(sample.Ambient))
        {
            AddAmbient(sample.Ambient);
        }

        if (!double.IsNaN(sample.AccelerationX))
        {
            AddAcceleration(sample);
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
        redStop.Restart();
        infraredStop.Restart();
        ambient.Restart();
        accelerationX.Restart();
        accelerationY.Restart();
        accelerationZ.Restart();
    }
}
