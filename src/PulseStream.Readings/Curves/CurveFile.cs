using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Readings.Curves;

/// <summary>
/// A calibration curve as JSON: `name`, `coefficients` in ascending powers of R (110, −25 where neither they nor a table
/// are given) or `table` of [R, SpO2], `from`, `to`, and optionally `arms` and `source`.
/// </summary>
public static class CurveFile
{
    // More light absorbed in red means less oxygen: a curve that rises is a slip. What rounding may add is no rise.
    private const double LargestRise = 1e-6;
    private const int RangeSteps = 200;

    /// <summary>Reads a curve; comments and trailing commas are allowed, unknown members are not.</summary>
    /// <param name="utf8Json">The file's bytes, UTF-8 with or without byte order mark.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <exception cref="BadInputException">
    /// No JSON, an unknown, missing or doubled member, coefficients and a table both, a range that is empty or leaves the
    /// table, a curve that rises within its range.
    /// </exception>
    public static CalibrationCurve Parse(ReadOnlyMemory<byte> utf8Json, string place) =>
        StrictJson.Read(utf8Json, place, root => Read(new CurveMembers(place, root)));

    /// <summary>Writes a curve as one line of JSON that <see cref="Parse"/> reads back equal.</summary>
    /// <param name="curve">The curve.</param>
    public static string Format(CalibrationCurve curve)
    {
        ArgumentNullException.ThrowIfNull(curve);
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteString("name", curve.Name);
            WriteShape(json, curve);
            json.WriteNumber("from", curve.FromRatio);
            json.WriteNumber("to", curve.ToRatio);
            if (curve.ArmsPercent is { } arms)
            {
                json.WriteNumber("arms", arms);
            }

            json.WriteString("source", curve.Source);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static CalibrationCurve Read(CurveMembers members)
    {
        members.AllowOnly("name", "coefficients", "table", "from", "to", "arms", "source");
        var from = members.Number("from", 0, double.MaxValue);
        var to = members.Number("to", from, double.MaxValue);
        if (to == from)
        {
            throw members.Wrong("to", $"expected more than 'from', {from}, found {to}", "Give the range of R that the curve was made for");
        }

        var arms = members.Has("arms") ? members.Number("arms", 0, 100) : (double?)null;
        var source = members.Has("source") ? members.Text("source") : "not told";
        var curve = members.Has("table")
            ? ReadTable(members, from, to, arms, source)
            : CalibrationCurve.OfPolynomial(members.Text("name"), members.Has("coefficients") ? members.Numbers("coefficients") : CalibrationCurve.TextbookLine.Coefficients, from, to, arms, source);
        CheckFall(members, curve);
        return curve;
    }

    private static CalibrationCurve ReadTable(CurveMembers members, double from, double to, double? arms, string source)
    {
        if (members.Has("coefficients"))
        {
            throw members.Wrong("coefficients", "expected either coefficients or a table, found both", "Keep one of them");
        }

        var (ratios, percents) = members.Pairs("table");
        if (from < ratios[0] || to > ratios[^1])
        {
            throw members.Wrong("table", $"expected points from R {from} to {to}, found them from {ratios[0]} to {ratios[^1]}", "Narrow 'from' and 'to', or add points");
        }

        return CalibrationCurve.OfTable(members.Text("name"), ratios, percents, from, to, arms, source);
    }

    private static void CheckFall(CurveMembers members, CalibrationCurve curve)
    {
        var last = curve.PercentAt(curve.FromRatio);
        for (var i = 1; i <= RangeSteps; i++)
        {
            var ratio = curve.FromRatio + ((curve.ToRatio - curve.FromRatio) * i / RangeSteps);
            var percent = curve.PercentAt(ratio);
            if (!(percent <= last + LargestRise))
            {
                var member = curve.Coefficients.Length > 0 ? "coefficients" : "table";
                throw members.Wrong(member, $"expected SpO2 that falls as R rises, found that it does not near R {ratio:0.###}", "Check the order and the signs, or narrow 'from' and 'to'");
            }

            last = percent;
        }
    }

    private static void WriteShape(Utf8JsonWriter json, CalibrationCurve curve)
    {
        json.WriteStartArray(curve.Coefficients.Length > 0 ? "coefficients" : "table");
        foreach (var coefficient in curve.Coefficients)
        {
            json.WriteNumberValue(coefficient);
        }

        for (var i = 0; i < curve.TableRatios.Length; i++)
        {
            json.WriteStartArray();
            json.WriteNumberValue(curve.TableRatios[i]);
            json.WriteNumberValue(curve.TablePercents[i]);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }
}
