using PulseStream.Simulation.Chance;

namespace PulseStream.Simulation.Blood;

/// <summary>What moves the light besides the pulse in a quiet finger: breathing, and the slow course of the vessels' tone.</summary>
internal sealed class Sway(Scenario scenario)
{
    // Breathing moves venous and arterial blood together.
    private const double RespirationRatio = 0.9;
    private const double BaselineRatio = 0.8;

    // A part of red's slow course that infrared does not know.
    private const double OwnOfRed = 0.3;

    // Breath is no clock: the phase wanders by about a fifth of a breath.
    private const double WanderRadians = 0.6;
    private const double WanderKnotSeconds = 12;
    private const double BaselineKnotSeconds = 10;

    // Peak to trough of a smooth random course, in deviations; common practice.
    private const double DeviationsInRange = 4;

    private readonly double _hertz = scenario.RespirationPerMinute / 60;
    private readonly double _respiration = scenario.RespirationPercent / 100 / 2;
    private readonly double _baseline = scenario.BaselinePercent / 100 / DeviationsInRange;
    private readonly SmoothNoise _wander = new(new SplitMix(scenario.Seed, Streams.RespirationWander), WanderKnotSeconds);
    private readonly SmoothNoise _shared = new(new SplitMix(scenario.Seed, Streams.Baseline), BaselineKnotSeconds);
    private readonly SmoothNoise _ofRed = new(new SplitMix(scenario.Seed, Streams.BaselineOfRed), BaselineKnotSeconds);

    /// <summary>Absorbance added to each channel at a time.</summary>
    public (double Infrared, double Red) At(double seconds)
    {
        var breath = _respiration * Math.Sin((Math.Tau * _hertz * seconds) + (WanderRadians * _wander.At(seconds)));
        var slow = _baseline * _shared.At(seconds);
        var own = _baseline * OwnOfRed * _ofRed.At(seconds);
        return (breath + slow, (RespirationRatio * breath) + (BaselineRatio * slow) + own);
    }
}
