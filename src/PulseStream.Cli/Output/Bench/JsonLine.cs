using System.Text.Encodings.Web;
using System.Text.Json;
using PulseStream.Accuracy.Statistics;

namespace PulseStream.Cli.Output.Bench;

/// <summary>Writes one JSON object with objects and lists in it as a line.</summary>
internal sealed class JsonLine : IDisposable
{
    // Statistics are compared to more digits than signals carry.
    private const int Decimals = 9;

    private readonly Stream _output;
    private readonly Utf8JsonWriter _json;

    public JsonLine(Stream output, string kind)
    {
        _output = output;
        _json = new(output, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        _json.WriteStartObject();
        Text(WireNames.Kind, kind);
    }

    public JsonLine Number(string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            // Adding zero turns minus zero into zero.
            _json.WriteNumber(name, Math.Round(number, Decimals) + 0.0);
        }
        else
        {
            _json.WriteNull(name);
        }

        return this;
    }

    public JsonLine Whole(string name, long value)
    {
        _json.WriteNumber(name, value);
        return this;
    }

    public JsonLine Text(string name, string? value)
    {
        _json.WriteString(name, value);
        return this;
    }

    public JsonLine Flag(string name, bool value)
    {
        _json.WriteBoolean(name, value);
        return this;
    }

    /// <summary>Two members: NAMELow and NAMEHigh.</summary>
    public JsonLine Ends(string name, ConfidenceInterval? interval) => Number(name + "Low", interval?.Low).Number(name + "High", interval?.High);

    public JsonLine Object(string name, Action<JsonLine> write)
    {
        _json.WriteStartObject(name);
        write(this);
        _json.WriteEndObject();
        return this;
    }

    public JsonLine List<T>(string name, IEnumerable<T> items, Action<JsonLine, T> write)
    {
        _json.WriteStartArray(name);
        foreach (var item in items)
        {
            _json.WriteStartObject();
            write(this, item);
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
        return this;
    }

    public JsonLine Numbers(string name, IEnumerable<double> values)
    {
        _json.WriteStartArray(name);
        foreach (var value in values)
        {
            _json.WriteNumberValue(Math.Round(value, Decimals) + 0.0);
        }

        _json.WriteEndArray();
        return this;
    }

    public JsonLine Texts(string name, IEnumerable<string> values)
    {
        _json.WriteStartArray(name);
        foreach (var value in values)
        {
            _json.WriteStringValue(value);
        }

        _json.WriteEndArray();
        return this;
    }

    /// <summary>Ends the line.</summary>
    public void Dispose()
    {
        _json.WriteEndObject();
        _json.Dispose();
        _output.Write("\n"u8);
    }
}
