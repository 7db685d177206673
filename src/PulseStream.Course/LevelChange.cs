namespace PulseStream.Course;

/// <summary>A lasting change of a person's level.</summary>
/// <param name="From">Last value of the level before.</param>
/// <param name="To">First value of the level after.</param>
/// <param name="SizePoints">Level after minus level before, in points: negative is a fall.</param>
/// <param name="Found">The value at which it became certain enough.</param>
/// <param name="IsOtherSensor">Whether the sensor changed meanwhile, which may be all of it.</param>
public sealed record LevelChange(DateTimeOffset From, DateTimeOffset To, double SizePoints, DateTimeOffset Found, bool IsOtherSensor);
