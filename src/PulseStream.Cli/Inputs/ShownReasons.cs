using PulseStream.Readings;
using PulseStream.Sources.Shown;

namespace PulseStream.Cli.Inputs;

/// <summary>What an instrument says of itself, in the reasons of this program.</summary>
internal static class ShownReasons
{
    private static readonly (SensorStates State, Reasons Reason)[] OfSensor =
    [
        (SensorStates.SensorUnconnectedToUser | SensorStates.SensorDisconnected, Reasons.NoFinger),
        (SensorStates.SensorDisplaced, Reasons.Misplaced),
        (SensorStates.SensorInterference, Reasons.AmbientLight),
        (SensorStates.ErraticSignal | SensorStates.QuestionablePulse | SensorStates.SignalProcessingIrregularity, Reasons.Motion),
        (SensorStates.NonPulsatileSignal, Reasons.NoPulse),
        (SensorStates.SignalAnalysisOngoing, Reasons.Settling),
        (SensorStates.LowPerfusion | SensorStates.InadequateSignal | SensorStates.PoorSignal, Reasons.LowPerfusion),
        (SensorStates.EquipmentMalfunction | SensorStates.SensorMalfunction | SensorStates.UnknownSensor, Reasons.MissingSamples),
    ];

    // A value that the instrument itself does not stand by is none, and one for show was never a person's.
    private const MeasurementStates Withheld =
        MeasurementStates.Unavailable | MeasurementStates.Questionable | MeasurementStates.Invalid | MeasurementStates.Demonstration | MeasurementStates.Testing;

    public static Reasons Of(in ToldMeasurement told)
    {
        var states = told.Sensor;
        var reasons = OfSensor.Where(known => (states & known.State) != SensorStates.None).Aggregate(Reasons.None, (all, known) => all | known.Reason);
        reasons |= (told.Measurement & (MeasurementStates.EarlyEstimate | MeasurementStates.Calibrating)) != MeasurementStates.None ? Reasons.Settling : Reasons.None;

        // Where a cause is told as well, that is the reason.
        return (told.Measurement & Withheld) != MeasurementStates.None && (reasons & ~Reasons.LowPerfusion) == Reasons.None ? reasons | Reasons.MissingSamples : reasons;
    }
}
