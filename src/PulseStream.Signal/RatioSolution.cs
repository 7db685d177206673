namespace PulseStream.Signal;

/// <summary>The steady fit r = R i and the moving one r = (M + D t) i, with the squares that each leaves over.</summary>
/// <param name="Ratio">R of the steady fit.</param>
/// <param name="RestSteady">Σ of what the steady fit leaves over, squared.</param>
/// <param name="Middle">M, R in the middle of the window.</param>
/// <param name="Drift">D, change of R over half the window.</param>
/// <param name="RestMoving">Σ of what the moving fit leaves over, squared.</param>
internal readonly record struct RatioSolution(double Ratio, double RestSteady, double Middle, double Drift, double RestMoving);
