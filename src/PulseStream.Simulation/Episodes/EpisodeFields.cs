using System.Globalization;
using PulseStream.Samples;

namespace PulseStream.Simulation.Episodes;

/// <summary>The parts of an episode's text, each read once.</summary>
internal sealed class EpisodeFields
{
    private const string Remedy = "Write an episode as KIND:FROM-TO:KEY=VALUE,KEY=VALUE with seconds, such as motion:20-30:size=3";
    private readonly string _text;
    private readonly Dictionary<string, string> _values = new(StringComparer.Ordinal);

    public EpisodeFields(string text)
    {
        _text = text;
        var parts = text.Split(':', StringSplitOptions.TrimEntries);
        if (parts.Length is < 2 or > 3)
        {
            throw Wrong($"expected two or three parts with ':' between them, found {parts.Length}");
        }

        Kind = parts[0];
        Span = ReadSpan(parts[1]);
        foreach (var pair in parts.Length == 3 ? parts[2].Split(',', StringSplitOptions.TrimEntries) : [])
        {
            var pieces = pair.Split('=', StringSplitOptions.TrimEntries);
            if (pieces.Length != 2 || !_values.TryAdd(pieces[0], pieces[1]))
            {
                throw Wrong($"expected KEY=VALUE, each key once, found '{pair}'");
            }
        }
    }

    /// <summary>First part.</summary>
    public string Kind { get; }

    /// <summary>Start and end in seconds.</summary>
    public (double From, double To) Span { get; }

    /// <summary>Takes a number.</summary>
    public double Number(string key, double ifAbsent, double low, double high)
    {
        if (!_values.Remove(key, out var text))
        {
            return ifAbsent;
        }

        return TryNumber(text, out var value) && value >= low && value <= high
            ? value
            : throw Wrong($"expected {key} from {low} to {high}, found '{text}'");
    }

    /// <summary>Takes one of the words of an enumeration, in small letters.</summary>
    public T Word<T>(string key, T ifAbsent)
        where T : struct, Enum
    {
        if (!_values.Remove(key, out var text))
        {
            return ifAbsent;
        }

        foreach (var value in Enum.GetValues<T>())
        {
            if (string.Equals(value.ToString(), text, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        var words = string.Join('|', Enum.GetValues<T>()).ToLowerInvariant();
        throw Wrong($"expected {key}={words}, found '{text}'");
    }

    /// <summary>Refuses keys that this kind of episode does not know.</summary>
    public void RequireAllRead()
    {
        if (_values.Count > 0)
        {
            throw Wrong($"{Kind} has no '{_values.Keys.First()}'");
        }
    }

    /// <summary>The sentence about this text.</summary>
    public BadInputException Wrong(string problem) => new($"--episode {_text}", problem, Remedy);

    private (double From, double To) ReadSpan(string text)
    {
        if (string.Equals(text, "all", StringComparison.Ordinal))
        {
            return (double.NegativeInfinity, double.PositiveInfinity);
        }

        var pieces = text.Split('-', StringSplitOptions.TrimEntries);
        return pieces.Length == 2 && TryNumber(pieces[0], out var from) && TryNumber(pieces[1], out var to) && from >= 0 && to > from
            ? (from, to)
            : throw Wrong($"expected FROM-TO in seconds with TO later than FROM, or 'all', found '{text}'");
    }

    private static bool TryNumber(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}
