namespace PulseStream.Sources.Shown;

/// <summary>Device and Sensor Status of the pulse oximeter service, bit by bit.</summary>
[Flags]
public enum SensorStates
{
    /// <summary>Nothing to say.</summary>
    None = 0,

    /// <summary>The display lags behind.</summary>
    ExtendedDisplayUpdate = 1 << 0,

    /// <summary>The instrument is faulty.</summary>
    EquipmentMalfunction = 1 << 1,

    /// <summary>Signal processing is irregular.</summary>
    SignalProcessingIrregularity = 1 << 2,

    /// <summary>The signal is inadequate.</summary>
    InadequateSignal = 1 << 3,

    /// <summary>The signal is poor.</summary>
    PoorSignal = 1 << 4,

    /// <summary>Perfusion is low.</summary>
    LowPerfusion = 1 << 5,

    /// <summary>The signal is erratic.</summary>
    ErraticSignal = 1 << 6,

    /// <summary>Nothing pulses.</summary>
    NonPulsatileSignal = 1 << 7,

    /// <summary>The pulse is doubtful.</summary>
    QuestionablePulse = 1 << 8,

    /// <summary>The instrument still searches.</summary>
    SignalAnalysisOngoing = 1 << 9,

    /// <summary>Something interferes with the sensor, such as room light.</summary>
    SensorInterference = 1 << 10,

    /// <summary>The sensor is on no finger.</summary>
    SensorUnconnectedToUser = 1 << 11,

    /// <summary>The sensor is of an unknown kind.</summary>
    UnknownSensor = 1 << 12,

    /// <summary>The sensor has slipped.</summary>
    SensorDisplaced = 1 << 13,

    /// <summary>The sensor is faulty.</summary>
    SensorMalfunction = 1 << 14,

    /// <summary>No sensor is plugged in.</summary>
    SensorDisconnected = 1 << 15,
}
