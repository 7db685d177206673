using System.Globalization;
using PulseStream.Samples;

namespace PulseStream.Simulation;

/// <summary>
/// A simulated recording as CSV: columns sample, time_s, red, infrared, and ambient and accel_x, accel_y, accel_z where the
/// scenario has them. Unlike a writer of samples it can write repeated rows and a counter that wraps.
/// </summary>
public static class RecordingText
{
    /// <summary>Writes header and rows, lines ending in LF.</summary>
    /// <param name="recording">What to write.</param>
    /// <param name="writer">Left open.</param>
    public static void Write(SimulatedRecording recording, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(writer);
        var hasAmbient = recording.Header.Columns.HasFlag(SampleColumns.Ambient);
        var hasAcceleration = recording.Header.Columns.HasFlag(SampleColumns.Acceleration);
        writer.Write("sample,time_s,red,infrared");
        writer.Write(hasAmbient ? ",ambient" : "");
        writer.Write(hasAcceleration ? ",accel_x,accel_y,accel_z\n" : "\n");
        foreach (var row in recording.Rows())
        {
            writer.Write(string.Create(CultureInfo.InvariantCulture, $"{row.Counter},{row.Seconds:0.######},{row.Sample.Red},{row.Sample.Infrared}"));
            writer.Write(hasAmbient ? string.Create(CultureInfo.InvariantCulture, $",{row.Sample.Ambient}") : "");
            writer.Write(hasAcceleration ? Acceleration(row.Sample) : "");
            writer.Write('\n');
        }
    }

    private static string Acceleration(in Sample sample) => string.Create(
        CultureInfo.InvariantCulture,
        $",{sample.AccelerationX},{sample.AccelerationY},{sample.AccelerationZ}");
}
