namespace PulseStream.Signal;

/// <summary>Values of three even and three odd shapes at one place before the middle of a window; behind it the odd ones change sign. The middle itself has half of the even ones, as it is met from both sides.</summary>
internal readonly record struct SlowRow(double Even0, double Even1, double Even2, double Odd0, double Odd1, double Odd2);
