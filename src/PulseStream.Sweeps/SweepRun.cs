namespace PulseStream.Sweeps;

/// <summary>What came of one recording.</summary>
/// <param name="Point">The cell it belongs to.</param>
/// <param name="Number">Which recording of the cell, from 0.</param>
/// <param name="Seconds">Seconds with a known truth.</param>
/// <param name="Used">Usable ones with a saturation.</param>
/// <param name="ErrorSum">Of the saturation's errors over the used seconds.</param>
/// <param name="SquareSum">Of their squares.</param>
/// <param name="PulseUsed">Seconds with a pulse rate.</param>
/// <param name="PulseSquareSum">Of the squares of its errors.</param>
/// <param name="Readings">Readings accepted.</param>
/// <param name="ReadingErrorSum">Of their errors.</param>
/// <param name="ReadingSquareSum">Of the squares.</param>
/// <param name="Wrong">Readings off by more than is allowed.</param>
/// <param name="FirstSeconds">When the first reading was accepted; null where none was.</param>
public sealed record SweepRun(
    SweepPoint Point,
    int Number,
    int Seconds,
    int Used,
    double ErrorSum,
    double SquareSum,
    int PulseUsed,
    double PulseSquareSum,
    int Readings,
    double ReadingErrorSum,
    double ReadingSquareSum,
    int Wrong,
    double? FirstSeconds);
