using System.Globalization;
using PulseStream.Simulation.Episodes;

namespace PulseStream.Simulation;

/// <summary>
/// The truth as two CSV files beside a recording. `NAME.truth.csv`: second, spo2, pulse, perfusion (empty while nothing living is
/// in the clip), finger (on, slipping, half-off, lifeless, off), disturbances (words with spaces between: motion, venous,
/// ambient, flicker, too-bright, missing; empty if none). `NAME.beats.csv`: time_s of the steepest rise of blood volume,
/// interval_s since the beat before it, which may lie before the recording or behind a finger that was off.
/// </summary>
public static class TruthText
{
    /// <summary>Path of the seconds' truth beside a recording.</summary>
    /// <param name="recordingPath">Path of the recording; its extension is replaced.</param>
    public static string SecondsPath(string recordingPath) => Path.ChangeExtension(recordingPath, ".truth.csv");

    /// <summary>Path of the beats' truth beside a recording.</summary>
    /// <param name="recordingPath">Path of the recording; its extension is replaced.</param>
    public static string BeatsPath(string recordingPath) => Path.ChangeExtension(recordingPath, ".beats.csv");

    /// <summary>Writes the truth of each second, lines ending in LF.</summary>
    /// <param name="recording">Whose truth.</param>
    /// <param name="writer">Left open.</param>
    public static void WriteSeconds(SimulatedRecording recording, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write("second,spo2,pulse,perfusion,finger,disturbances\n");
        foreach (var t in recording.Truth())
        {
            writer.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"{t.Second},{Number(t.Spo2Percent)},{Number(t.PulsePerMinute)},{Number(t.PerfusionPercent)},{Word(t.Finger)},{Words(t.Disturbances)}\n"));
        }
    }

    /// <summary>Writes the beats, lines ending in LF.</summary>
    /// <param name="recording">Whose beats.</param>
    /// <param name="writer">Left open.</param>
    public static void WriteBeats(SimulatedRecording recording, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(recording);
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write("time_s,interval_s\n");
        foreach (var beat in recording.Beats())
        {
            writer.Write($"{Number(beat.Seconds)},{Number(beat.IntervalSeconds)}\n");
        }
    }

    private static string Number(double value) =>
        double.IsNaN(value) ? "" : value.ToString("0.######", CultureInfo.InvariantCulture);

    private static string Word(FingerPlacement placement) => placement switch
    {
        FingerPlacement.Slipping => "slipping",
        FingerPlacement.HalfOff => "half-off",
        FingerPlacement.Lifeless => "lifeless",
        FingerPlacement.Off => "off",
        _ => "on",
    };

    private static string Words(Disturbances disturbances) => string.Join(
        ' ',
        Enum.GetValues<Disturbances>().Where(d => d != Disturbances.None && disturbances.HasFlag(d)).Select(Word));

    private static string Word(Disturbances disturbance) => disturbance switch
    {
        Disturbances.TooBright => "too-bright",
        Disturbances.Motion => "motion",
        Disturbances.Venous => "venous",
        Disturbances.Ambient => "ambient",
        Disturbances.Flicker => "flicker",
        _ => "missing",
    };
}
