namespace PulseStream.Signal;

/// <summary>Values of three even and three odd shapes at one place before the middle of a window; behind it the odd ones change sign.</summary>
internal readonly record struct SlowRow(double Even0, double Even1, double Even2, double Odd0, double Odd1, double Odd2);
