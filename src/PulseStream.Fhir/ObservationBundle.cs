using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;
using PulseStream.Readings;

namespace PulseStream.Fhir;

/// <summary>
/// A FHIR R4 Bundle of Observations: SpO2 and pulse of each accepted reading after the profiles for vital signs,
/// perfusion, and for each sitting without a reading an SpO2 without a value and with the reasons. The person is named by
/// the pseudonym alone. The same session always gives the same text.
/// </summary>
public static class ObservationBundle
{
    private const string Units = "http://unitsofmeasure.org";
    private const string Nobody = "unassigned";
    private const string Identifiers = "urn:pulsestream:observation";
    private const string Pseudonyms = "urn:pulsestream:pseudonym";

    /// <summary>The bundle as JSON.</summary>
    /// <param name="session">What was found.</param>
    public static string JsonOf(MeasuredSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var bundle = new Bundle { Type = Bundle.BundleType.Collection };
        foreach (var observation in ObservationsOf(session))
        {
            bundle.Entry.Add(new Bundle.EntryComponent { FullUrl = UrlOf(observation.Identifier[0].Value!), Resource = observation });
        }

        return new FhirJsonSerializer().SerializeToString(bundle, pretty: true);
    }

    private static IEnumerable<Observation> ObservationsOf(MeasuredSession session)
    {
        foreach (var reading in session.Readings)
        {
            var interval = reading.Spo2.HasInterval ? string.Create(CultureInfo.InvariantCulture, $"95 % interval {reading.Spo2.LowPercent:0.0} to {reading.Spo2.HighPercent:0.0} %") : "an instrument's own reading, interval not told";
            var note = $"Held for {reading.HeldSeconds} s; {interval}.";
            yield return With(Begin(session, reading.SecondIndex, "spo2", Codes.Oxygen(), Codes.OxygenProfile), reading.WholeSpo2Percent, "%", note);
            if (reading.PulseRatePerMinute is { } pulse)
            {
                yield return With(Begin(session, reading.SecondIndex, "pulse", Codes.Pulse(), Codes.RateProfile), pulse, "/min", null);
            }

            if (reading.PerfusionPercent is { } perfusion && double.IsFinite(perfusion))
            {
                yield return With(Begin(session, reading.SecondIndex, "perfusion", Codes.Perfusion(), null), Math.Round((decimal)perfusion, 2), "%", null);
            }
        }

        foreach (var sitting in session.Sittings.Where(sitting => sitting.ReadingCount == 0))
        {
            yield return WithoutReading(session, sitting);
        }
    }

    // Without red light there is a pulse and never an SpO2: nothing was refused then.
    private static Observation WithoutReading(MeasuredSession session, Sitting sitting)
    {
        if (sitting.MedianPulseRatePerMinute is { } pulse)
        {
            return With(Begin(session, sitting.FromSecond, "pulse", Codes.Pulse(), Codes.RateProfile), pulse, "/min", null);
        }

        var refused = Begin(session, sitting.FromSecond, "refused", Codes.Oxygen(), Codes.OxygenProfile);
        refused.DataAbsentReason = RefusalCodes.AbsentReason(sitting.Reasons);
        refused.Component.AddRange(RefusalCodes.Components(sitting.Reasons));
        return refused;
    }

    private static Observation Begin(MeasuredSession session, long second, string what, CodeableConcept code, string? profile) => new()
    {
        Meta = profile is null ? null : new Meta { Profile = [profile] },
        Identifier = [new Identifier(Identifiers, $"{session.Session}/{second}/{what}")],
        Status = ObservationStatus.Final,
        Category = [Codes.VitalSigns()],
        Code = code,
        Subject = new ResourceReference { Type = "Patient", Identifier = new Identifier(Pseudonyms, session.Person ?? Nobody) },
        Effective = new FhirDateTime(session.Start.AddSeconds(second).ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture)),
        Device = new ResourceReference { Display = session.Program },
    };

    private static Observation With(Observation observation, decimal value, string unit, string? note)
    {
        observation.Value = new Quantity(value, unit, Units);
        if (note is not null)
        {
            observation.Note.Add(new Annotation { Text = note });
        }

        return observation;
    }

    // The same observation has the same address each time, so that a receiver knows it again.
    private static string UrlOf(string identifier)
    {
        var bytes = SHA256.HashData(Encoding.UTF8.GetBytes(identifier)).AsSpan(0, 16);

        // Version 8 of RFC 9562: a layout of one's own.
        (bytes[6], bytes[8]) = ((byte)((bytes[6] & 0x0F) | 0x80), (byte)((bytes[8] & 0x3F) | 0x80));
        return $"urn:uuid:{new Guid(bytes, bigEndian: true)}";
    }
}
