using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace PulseStream.Cli.Output;

/// <summary>Writes JSON objects, one a line.</summary>
internal sealed class NdjsonLine(Stream output) : IDisposable
{
    // Signals carry no more; fewer digits keep lines readable.
    private const int Decimals = 4;

    private readonly ArrayBufferWriter<byte> _bytes = new();

    // The line goes to a program or a terminal, never into a web page: apostrophes stay themselves.
    private readonly Utf8JsonWriter _json = new(Stream.Null, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });

    public NdjsonLine Begin(string kind)
    {
        _bytes.ResetWrittenCount();
        _json.Reset(_bytes);
        _json.WriteStartObject();
        return Add(WireNames.Kind, kind);
    }

    public NdjsonLine Add(string name, string value)
    {
        _json.WriteString(name, value);
        return this;
    }

    /// <summary>Adds a text; null where it is not known.</summary>
    public NdjsonLine AddText(string name, string? value)
    {
        _json.WriteString(name, value);
        return this;
    }

    public NdjsonLine Add(string name, bool value)
    {
        _json.WriteBoolean(name, value);
        return this;
    }

    public NdjsonLine Add(string name, long? value)
    {
        if (value is { } number)
        {
            _json.WriteNumber(name, number);
        }
        else
        {
            _json.WriteNull(name);
        }

        return this;
    }

    public NdjsonLine Add(string name, double? value) => AddRounded(name, value, Decimals);

    /// <summary>Adds a number with so many decimals at most; null where it is not known.</summary>
    public NdjsonLine AddRounded(string name, double? value, int decimals)
    {
        if (value is { } number && double.IsFinite(number))
        {
            // Adding zero turns minus zero into zero.
            _json.WriteNumber(name, Math.Round(number, decimals) + 0.0);
        }
        else
        {
            _json.WriteNull(name);
        }

        return this;
    }

    public NdjsonLine Add(string name, IEnumerable<string> values)
    {
        _json.WriteStartArray(name);
        foreach (var value in values)
        {
            _json.WriteStringValue(value);
        }

        _json.WriteEndArray();
        return this;
    }

    public void End()
    {
        _json.WriteEndObject();
        _json.Flush();
        _bytes.Write("\n"u8);
        output.Write(_bytes.WrittenSpan);
    }

    public void Dispose() => _json.Dispose();
}
