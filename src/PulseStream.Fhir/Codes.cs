using Hl7.Fhir.Model;

namespace PulseStream.Fhir;

/// <summary>Codes of quantities: LOINC, and the nomenclature of IEEE 11073-10101 beside it.</summary>
internal static class Codes
{
    private const string Loinc = "http://loinc.org";
    private const string Nomenclature = "urn:iso:std:iso:11073:10101";

    // Profiles of FHIR R4, vital signs.
    private const string Profiles = "http://hl7.org/fhir/StructureDefinition/";

    public const string OxygenProfile = Profiles + "oxygensat";
    public const string RateProfile = Profiles + "heartrate";

    /// <summary>The profile asks for 2708-6; 59408-5 says how it was measured.</summary>
    public static CodeableConcept Oxygen() => new()
    {
        Coding =
        [
            new Coding(Loinc, "2708-6", "Oxygen saturation in Arterial blood"),
            new Coding(Loinc, "59408-5", "Oxygen saturation in Arterial blood by Pulse oximetry"),
            new Coding(Nomenclature, "150456", "MDC_PULS_OXIM_SAT_O2"),
        ],
        Text = "SpO2",
    };

    public static CodeableConcept Pulse() => new()
    {
        Coding = [new Coding(Loinc, "8867-4", "Heart rate"), new Coding(Nomenclature, "149530", "MDC_PULS_OXIM_PULS_RATE")],
        Text = "Pulse rate",
    };

    public static CodeableConcept Perfusion() => new()
    {
        Coding = [new Coding(Loinc, "61006-3", "Perfusion index Tissue by Pulse oximetry"), new Coding(Nomenclature, "150488", "MDC_BLD_PERF_INDEX")],
        Text = "Perfusion index",
    };

    public static CodeableConcept VitalSigns() =>
        new("http://terminology.hl7.org/CodeSystem/observation-category", "vital-signs", "Vital Signs", null);
}
