using System.Buffers.Binary;

namespace PulseStream.Sources.Shown;

/// <summary>
/// One measurement of the Bluetooth pulse oximeter service: flags, SpO2 and pulse rate as SFLOAT, then what the flags declare. Lowest
/// octet first.
/// </summary>
/// <param name="Spo2Percent">SpO2; NaN where the instrument has none, infinite where it is off its scale.</param>
/// <param name="PulsePerMinute">Pulse rate, likewise.</param>
/// <param name="Measurement">Measurement status; none where not told.</param>
/// <param name="Sensor">Device and sensor status; none where not told.</param>
/// <param name="PerfusionPercent">Pulse amplitude index; NaN where not told.</param>
public readonly record struct ToldMeasurement(
    double Spo2Percent, double PulsePerMinute, MeasurementStates Measurement, SensorStates Sensor, double PerfusionPercent)
{
    private const int WordBytes = 2;
    private const int FlagBytes = 1;
    private const int PairBytes = 2 * WordBytes;
    private const int SensorBytes = 3;
    private const int TimeStampBytes = 7;
    private const int ReservedFlags = 0xE0;

    // What flag 0, 1, 2 … declares, in the order of the bytes. Fast and slow averages of the same values are stepped over: the
    // instrument's normal ones are what it shows. So is its own clock: nobody knows who has set it.
    private static readonly Field[] Continuous =
        [new(PairBytes), new(PairBytes), new(WordBytes, Part.Measurement), new(SensorBytes, Part.Sensor), new(WordBytes, Part.Perfusion)];

    private static readonly Field[] SpotCheck =
        [new(TimeStampBytes), new(WordBytes, Part.Measurement), new(SensorBytes, Part.Sensor), new(WordBytes, Part.Perfusion), new(0)];

    private enum Part
    {
        Skipped,
        Measurement,
        Sensor,
        Perfusion,
    }

    /// <summary>Reads a PLX Continuous Measurement (0x2A5F). One that lacks a field which its flags declare, or holds more than they declare, is damaged.</summary>
    /// <param name="frame">All its bytes.</param>
    /// <param name="measurement">What it says.</param>
    /// <returns>Whether it is whole.</returns>
    public static bool TryReadContinuous(ReadOnlySpan<byte> frame, out ToldMeasurement measurement) => TryRead(frame, Continuous, out measurement);

    /// <summary>The same for a PLX Spot-Check Measurement (0x2A5E), whose flags declare other fields.</summary>
    /// <param name="frame">All its bytes.</param>
    /// <param name="measurement">What it says.</param>
    /// <returns>Whether it is whole.</returns>
    public static bool TryReadSpotCheck(ReadOnlySpan<byte> frame, out ToldMeasurement measurement) => TryRead(frame, SpotCheck, out measurement);

    private static bool TryRead(ReadOnlySpan<byte> frame, Field[] fields, out ToldMeasurement measurement)
    {
        measurement = default;
        if (frame.IsEmpty || (frame[0] & ReservedFlags) != 0 || frame.Length != LengthOf(frame[0], fields))
        {
            return false;
        }

        var (measured, sensor, perfusion, at) = (MeasurementStates.None, SensorStates.None, double.NaN, FlagBytes + PairBytes);
        for (var flag = 0; flag < fields.Length; flag++)
        {
            if (!IsThere(frame[0], flag))
            {
                continue;
            }

            // The upper octet of the sensor's three is reserved.
            var word = fields[flag].Part == Part.Skipped ? (ushort)0 : Word(frame, at);
            measured = fields[flag].Part == Part.Measurement ? (MeasurementStates)word : measured;
            sensor = fields[flag].Part == Part.Sensor ? (SensorStates)word : sensor;
            perfusion = fields[flag].Part == Part.Perfusion ? Sfloat.Decode(word) : perfusion;
            at += fields[flag].Bytes;
        }

        measurement = new(Sfloat.Decode(Word(frame, FlagBytes)), Sfloat.Decode(Word(frame, FlagBytes + WordBytes)), measured, sensor, perfusion);
        return true;
    }

    private static int LengthOf(byte flags, Field[] fields) =>
        FlagBytes + PairBytes + fields.Select((field, flag) => IsThere(flags, flag) ? field.Bytes : 0).Sum();

    private static bool IsThere(byte flags, int flag) => (flags >> flag & 1) == 1;

    private static ushort Word(ReadOnlySpan<byte> frame, int at) => BinaryPrimitives.ReadUInt16LittleEndian(frame[at..]);

    private readonly record struct Field(int Bytes, Part Part = Part.Skipped);
}
