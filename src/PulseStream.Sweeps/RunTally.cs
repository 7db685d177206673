using PulseStream.Readings;
using PulseStream.Signal;

namespace PulseStream.Sweeps;

/// <summary>Holds what a reader finds against the truth.</summary>
/// <param name="truthAt">True saturation and pulse rate of a second; NaN where there is none.</param>
/// <param name="wrongPoints">A reading farther off than this is wrong.</param>
public sealed class RunTally(Func<long, (double Spo2, double Pulse)> truthAt, double wrongPoints) : IReadingObserver
{
    private int _seconds;
    private int _used;
    private double _errors;
    private double _squares;
    private int _pulses;
    private double _pulseSquares;
    private int _readings;
    private double _readingErrors;
    private double _readingSquares;
    private int _wrong;
    private double? _first;

    /// <inheritdoc/>
    public void OnSecond(in Second second) => Add(second.SecondIndex, second.Usable?.Spo2?.Percent, second.Usable?.PulseRatePerMinute);

    /// <summary>Holds one second against the truth.</summary>
    /// <param name="second">Which.</param>
    /// <param name="spo2">What was shown; null where nothing was.</param>
    /// <param name="pulse">Likewise.</param>
    public void Add(long second, double? spo2, double? pulse)
    {
        var truth = truthAt(second);
        if (double.IsNaN(truth.Spo2))
        {
            return;
        }

        _seconds++;
        if (spo2 - truth.Spo2 is { } error)
        {
            _used++;
            _errors += error;
            _squares += error * error;
        }

        if (pulse - truth.Pulse is { } pulseError && !double.IsNaN(pulseError))
        {
            _pulses++;
            _pulseSquares += pulseError * pulseError;
        }
    }

    /// <inheritdoc/>
    public void OnReading(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var error = reading.WholeSpo2Percent - truthAt(reading.SecondIndex).Spo2;
        _readings++;
        _first ??= reading.SecondIndex + 1;

        // A reading where there is no truth, as without a finger, is wrong whatever it says.
        _wrong += Math.Abs(error) <= wrongPoints ? 0 : 1;
        if (!double.IsNaN(error))
        {
            _readingErrors += error;
            _readingSquares += error * error;
        }
    }

    /// <inheritdoc/>
    public void OnBeat(in Beat beat)
    {
    }

    /// <inheritdoc/>
    public void OnSitting(Sitting sitting)
    {
    }

    /// <summary>The sums so far.</summary>
    /// <param name="point">The cell.</param>
    /// <param name="number">Which recording of it.</param>
    public SweepRun ToRun(SweepPoint point, int number) => new(
        point, number, _seconds, _used, _errors, _squares, _pulses, _pulseSquares, _readings, _readingErrors, _readingSquares, _wrong, _first);
}
