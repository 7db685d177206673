namespace PulseStream.Simulation.Tracks;

/// <summary>A corner of a <see cref="Track"/>: the line arrives at one value and leaves from another; equal where nothing jumps.</summary>
internal readonly record struct TrackPoint(double Seconds, double Before, double After);
