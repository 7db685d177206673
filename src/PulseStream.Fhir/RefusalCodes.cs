using Hl7.Fhir.Model;
using PulseStream.Readings;

namespace PulseStream.Fhir;

/// <summary>Why there is no value, in the words of the standards.</summary>
internal static class RefusalCodes
{
    private const string AbsentReasons = "http://terminology.hl7.org/CodeSystem/data-absent-reason";

    // Bits of the status that IEEE 11073-10404 gives pulse oximeters, as the personal health device guide codes them.
    private const string StatusBits = "http://terminology.hl7.org/CodeSystem/ASN1ToHL7";

    private static readonly (Reasons Reason, string Code, string Name)[] Bits =
    [
        (Reasons.NoFinger, "150604.4", "sensor-off"),
        (Reasons.Misplaced, "150604.2", "sensor-displaced"),
        (Reasons.AmbientLight, "150604.5", "sensor-interference"),
        (Reasons.Settling, "150604.6", "signal-searching"),
        (Reasons.OutOfRange, "150604.7", "signal-pulse-questionable"),
        (Reasons.NoPulse, "150604.8", "signal-non-pulsatile"),
        (Reasons.Motion, "150604.9", "signal-erratic"),
        (Reasons.LowPerfusion, "150604.10", "signal-low-perfusion"),
        (Reasons.Saturated, "150604.12", "signal-inadequate"),
        (Reasons.MissingSamples, "150604.13", "signal-processing-irregularity"),
    ];

    /// <summary>Why a sitting has no value.</summary>
    public static CodeableConcept AbsentReason(Reasons reasons) => reasons switch
    {
        Reasons.None or Reasons.Settling => new CodeableConcept(AbsentReasons, "temp-unknown", "Temporarily Unknown", null),
        Reasons.NoFinger => new CodeableConcept(AbsentReasons, "not-performed", "Not Performed", null),
        _ => new CodeableConcept(AbsentReasons, "error", "Error", null),
    };

    /// <summary>One component for each reason.</summary>
    public static IEnumerable<Observation.ComponentComponent> Components(Reasons reasons) => Bits
        .Where(bit => reasons.HasFlag(bit.Reason))
        .Select(bit => new Observation.ComponentComponent
        {
            Code = new CodeableConcept(StatusBits, bit.Code, bit.Name, null),
            Value = new FhirBoolean(true),
        });
}
