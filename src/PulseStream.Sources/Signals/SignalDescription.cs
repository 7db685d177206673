namespace PulseStream.Sources.Signals;

/// <summary>What a file says of one of its signals.</summary>
/// <param name="Name">Its name or label.</param>
/// <param name="Unit">Unit of its physical values.</param>
/// <param name="RateHz">Samples a second.</param>
internal sealed record SignalDescription(string Name, string Unit, double RateHz);
