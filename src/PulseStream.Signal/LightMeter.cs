using PulseStream.Samples;

namespace PulseStream.Signal;

/// <summary>Gathers the light of one second: levels, end stops, dark samples, movement of the sensor.</summary>
internal sealed class LightMeter
{
    private readonly EndStop redStop;
    private readonly EndStop infraredStop;
    private readonly Moments infrared = new();
    private readonly Moments infraredLog = new();
    private readonly Moments red = new();
    private readonly Moments ambient = new();
    private readonly Moments accelerationX = new();
    private readonly Moments accelerationY = new();
    private readonly Moments accelerationZ = new();
    private double ambientHighest;
    private double ambientLowest;
    private int samples;

    public LightMeter(double? fullScaleCounts, double rateHz)
    {
        redStop = new(fullScaleCounts ?? double.NaN, rateHz);
        infraredStop = new(fullScaleCounts ?? double.NaN, rateHz);
        Restart();
    }

    /// <summary>Adds a sample.</summary>
    /// <param name="sample">As received: saturation is judged before ambient is subtracted, afterwards it no longer shows.</param>
    /// <param name="infraredLight">Infrared with ambient taken off.</param>
    /// <param name="redLight">Red with ambient taken off.</param>
    /// <param name="logInfrared">Natural logarithm of infrared light.</param>
    public void Step(in Sample sample, double infraredLight, double redLight, double logInfrared)
    {
        samples++;
        if (!double.IsNaN(sample.Infrared))
        {
            infraredStop.Step(sample.Infrared);
            infrared.Add(infraredLight);
            infraredLog.Add(logInfrared);
        }

        if (!double.IsNaN(sample.Red))
        {
            redStop.Step(sample.Red);
            red.Add(redLight);
        }

        if (!double.IsNaN(sample.Ambient))
        {
            AddAmbient(sample.Ambient);
        }

        if (!double.IsNaN(sample.AccelerationX))
        {
            accelerationX.Add(sample.AccelerationX);
            accelerationY.Add(sample.AccelerationY);
            accelerationZ.Add(sample.AccelerationZ);
        }
    }

    /// <summary>The second is over: tells its light and starts the next.</summary>
    /// <param name="expected">Samples that the second should have held.</param>
    /// <param name="noiseSwing">Standard deviation of white noise in the logarithm of infrared.</param>
    public SecondLight Take(long expected, double noiseSwing)
    {
        var clipped = Math.Max(redStop.Count, infraredStop.Count);
        var light = new SecondLight(
            Math.Max(0, 1 - ((double)samples / expected)),
            samples > 0 ? Math.Min(1, (double)clipped / samples) : 0,
            infrared.Mean,
            red.Mean,
            ambient.Mean,
            ambient.Count > 0 ? ambientHighest - ambientLowest : double.NaN,
            Math.Sqrt(accelerationX.Variance + accelerationY.Variance + accelerationZ.Variance),
            Math.Sqrt(infraredLog.Variance),
            noiseSwing);
        Restart();
        return light;
    }

    private void AddAmbient(double counts)
    {
        ambient.Add(counts);
        ambientHighest = Math.Max(ambientHighest, counts);
        ambientLowest = Math.Min(ambientLowest, counts);
    }

    private void Restart()
    {
        samples = 0;
        ambientHighest = double.NegativeInfinity;
        ambientLowest = double.PositiveInfinity;
        redStop.Restart();
        infraredStop.Restart();
        infrared.Restart();
        infraredLog.Restart();
        red.Restart();
        ambient.Restart();
        accelerationX.Restart();
        accelerationY.Restart();
        accelerationZ.Restart();
    }
}
