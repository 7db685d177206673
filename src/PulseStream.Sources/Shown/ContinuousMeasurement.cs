using System.Buffers.Binary;

namespace PulseStream.Sources.Shown;

/// <summary>
/// One PLX Continuous Measurement (0x2A5F) of the Bluetooth pulse oximeter service: flags, SpO2 and pulse rate as SFLOAT, then
/// what the flags declare. Lowest octet first.
/// </summary>
/// <param name="Spo2Percent">SpO2; NaN where the instrument has none, infinite where it is off its scale.</param>
/// <param name="PulsePerMinute">Pulse rate, likewise.</param>
/// <param name="Measurement">Measurement status; none where not told.</param>
/// <param name="Sensor">Device and sensor status; none where not told.</param>
/// <param name="PerfusionPercent">Pulse amplitude index; NaN where not told.</param>
public readonly record struct ContinuousMeasurement(
    double Spo2Percent, double PulsePerMinute, MeasurementStates Measurement, SensorStates Sensor, double PerfusionPercent)
{
    private const int WordBytes = 2;
    private const int FlagBytes = 1;
    private const int PairBytes = 2 * WordBytes;
    private const int SensorBytes = 3;
    private const int HasFast = 1 << 0;
    private const int HasSlow = 1 << 1;
    private const int HasMeasurement = 1 << 2;
    private const int HasSensor = 1 << 3;
    private const int HasPerfusion = 1 << 4;
    private const int ReservedFlags = 0xE0;

    /// <summary>Reads a frame. One that lacks a field which its flags declare, or holds more than they declare, is damaged.</summary>
    /// <param name="frame">All its bytes.</param>
    /// <param name="measurement">What it says.</param>
    /// <returns>Whether it is whole.</returns>
    public static bool TryRead(ReadOnlySpan<byte> frame, out ContinuousMeasurement measurement)
    {
        measurement = default;
        if (frame.IsEmpty || (frame[0] & ReservedFlags) != 0 || frame.Length != LengthOf(frame[0]))
        {
            return false;
        }

        var flags = frame[0];

        // Fast and slow averages of the same values: the instrument's normal ones are what it shows.
        var at = FlagBytes + PairBytes + ((flags & HasFast) != 0 ? PairBytes : 0) + ((flags & HasSlow) != 0 ? PairBytes : 0);
        var states = (MeasurementStates)Next(frame, flags & HasMeasurement, WordBytes, ref at);
        var sensor = (SensorStates)Next(frame, flags & HasSensor, SensorBytes, ref at);
        measurement = new(
            Sfloat.Decode(Word(frame, FlagBytes)),
            Sfloat.Decode(Word(frame, FlagBytes + WordBytes)),
            states,
            sensor,
            (flags & HasPerfusion) != 0 ? Sfloat.Decode(Word(frame, at)) : double.NaN);
        return true;
    }

    private static int LengthOf(byte flags) => FlagBytes + PairBytes
        + ((flags & HasFast) != 0 ? PairBytes : 0)
        + ((flags & HasSlow) != 0 ? PairBytes : 0)
        + ((flags & HasMeasurement) != 0 ? WordBytes : 0)
        + ((flags & HasSensor) != 0 ? SensorBytes : 0)
        + ((flags & HasPerfusion) != 0 ? WordBytes : 0);

    private static ushort Word(ReadOnlySpan<byte> frame, int at) => BinaryPrimitives.ReadUInt16LittleEndian(frame[at..]);

    private static int Next(ReadOnlySpan<byte> frame, int isThere, int bytes, ref int at)
    {
        if (isThere == 0)
        {
            return 0;
        }

        // The upper octet of the sensor's three is reserved.
        var value = Word(frame, at);
        at += bytes;
        return value;
    }
}
