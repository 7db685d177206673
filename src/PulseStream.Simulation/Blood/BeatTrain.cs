namespace PulseStream.Simulation.Blood;

/// <summary>The blood volume of the fingertip over time, made forward beat by beat; it keeps only the beats that overlap now.</summary>
internal sealed class BeatTrain
{
    private readonly Heart _heart;
    private readonly PulseRange _range;
    private readonly List<PulseWave> _waves = [];
    private int _current;

    public BeatTrain(Scenario scenario)
    {
        _heart = new Heart(scenario);
        _range = new PulseRange(scenario.SecondWave);
    }

    /// <summary>Mean of the volume, 0 to 1.</summary>
    public double MeanVolume => _range.Mean;

    /// <summary>Goes on to a time, never back; makes the beats that matter there.</summary>
    public void AdvanceTo(double seconds)
    {
        while (_waves.Count == 0 || _waves[^1].StartSeconds <= seconds)
        {
            _waves.Add(_heart.NextBeat());
            StepTo(seconds);
        }

        StepTo(seconds);
    }

    /// <summary>Blood volume now, 0 in the trough and 1 at the top of an ordinary beat.</summary>
    public double VolumeAt(double seconds)
    {
        var sum = 0.0;
        foreach (var wave in _waves)
        {
            sum += wave.VolumeAt(seconds);
        }

        return (sum - _range.Trough) / _range.Height;
    }

    /// <summary>Phase of the beat now, 0 to 1 from its onset to the next one's.</summary>
    public double PhaseAt(double seconds) => (seconds - _waves[_current].OnsetSeconds) / _waves[_current].IntervalSeconds;

    private void StepTo(double seconds)
    {
        while (_current + 1 < _waves.Count && _waves[_current + 1].OnsetSeconds <= seconds)
        {
            _current++;
        }

        while (_current > 0 && _waves[0].EndSeconds < seconds)
        {
            _waves.RemoveAt(0);
            _current--;
        }
    }
}
