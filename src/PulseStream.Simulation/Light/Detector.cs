using PulseStream.Samples;
using PulseStream.Simulation.Blood;
using PulseStream.Simulation.Chance;

namespace PulseStream.Simulation.Light;

/// <summary>Makes the samples of a scenario in order of time.</summary>
internal sealed class Detector
{
    // The dark is measured in a slot of its own behind the lights.
    private const double DarkSlotSeconds = 0.0005;

    // m/s²; common practice for a small accelerometer, rounded to its steps.
    private const double AccelerationNoise = 0.02;
    private const int AccelerationDigits = 3;

    private readonly Scenario _scenario;
    private readonly BeatTrain _train;
    private readonly PulseDepth _depth;
    private readonly Sway _sway;
    private readonly Converter _converter;
    private readonly SplitMix _light;
    private readonly SplitMix _dark;
    private readonly SplitMix _acceleration;

    public Detector(Scenario scenario)
    {
        _scenario = scenario;
        _train = new BeatTrain(scenario);
        _depth = new PulseDepth(_train.MeanVolume);
        _sway = new Sway(scenario);
        _converter = new Converter(scenario.Bits);
        _light = new SplitMix(scenario.Seed, Streams.Light);
        _dark = new SplitMix(scenario.Seed, Streams.Dark);
        _acceleration = new SplitMix(scenario.Seed, Streams.Acceleration);
    }

    /// <summary>The sample at an index, never lower than the one before.</summary>
    public Sample At(long index)
    {
        var path = PathAt(_scenario.SecondsAt(index));
        var (first, second) = _light.NormalPair(index);
        var red = _converter.Red(path.Red * (1 + (_scenario.Noise * first)), path.Ambient);
        var infrared = _converter.Infrared(path.Infrared * (1 + (_scenario.Noise * second)), path.Ambient);
        var sample = Sample.OfLight(red, infrared);
        if (_scenario.WithAmbientColumn)
        {
            sample = sample with { Ambient = _converter.Dark(path.AmbientInTheDark + (_scenario.Noise * _dark.Bell(index))) };
        }

        return _scenario.WithAcceleration ? WithAcceleration(sample, path, index) : sample;
    }

    private OpticalPath PathAt(double seconds)
    {
        _train.AdvanceTo(seconds);
        var depth = _depth.At(_scenario.Perfusion.At(seconds));
        var pulse = depth * _train.VolumeAt(seconds);
        var sway = _sway.At(seconds);
        var path = new OpticalPath
        {
            InfraredAbsorbance = pulse + sway.Infrared,
            RedAbsorbance = (_scenario.Ratio.RatioAt(_scenario.Spo2.At(seconds)) * pulse) + sway.Red,
        };
        var now = new Instant(seconds, seconds + DarkSlotSeconds, _scenario.DurationSeconds, depth, _train.PhaseAt(seconds));
        for (var i = 0; i < _scenario.Episodes.Count; i++)
        {
            var episode = _scenario.Episodes[i];
            if (seconds >= episode.FromSeconds && seconds < episode.ToSeconds)
            {
                episode.Act(now, Streams.SeedOfEpisode(_scenario.Seed, i), ref path);
            }
        }

        return path;
    }

    private Sample WithAcceleration(in Sample sample, in OpticalPath path, long index)
    {
        var place = 3 * index;
        return sample with
        {
            AccelerationX = Acceleration(path.AccelerationX, place),
            AccelerationY = Acceleration(path.AccelerationY, place + 1),
            AccelerationZ = Acceleration(path.AccelerationZ, place + 2),
        };
    }

    private double Acceleration(double value, long place) =>
        Math.Round(value + (AccelerationNoise * _acceleration.Bell(place)), AccelerationDigits);
}
