namespace PulseStream.Course;

/// <summary>The reading of one sitting.</summary>
/// <param name="Time">When it was accepted, with the local offset.</param>
/// <param name="Spo2Percent">Unrounded.</param>
/// <param name="Sensor">Which sensor; null where not told.</param>
public readonly record struct CoursePoint(DateTimeOffset Time, double Spo2Percent, string? Sensor = null);
