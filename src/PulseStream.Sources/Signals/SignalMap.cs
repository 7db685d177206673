using PulseStream.Samples;

namespace PulseStream.Sources.Signals;

/// <summary>Which signal of a file carries which light, as a person names it: red=LED1, infrared=LED2.</summary>
public sealed class SignalMap
{
    private const string Option = "--map";

    private readonly Dictionary<Channel, string> _names = [];

    private SignalMap()
    {
    }

    /// <summary>Nothing named: names and units tell.</summary>
    public static SignalMap Empty { get; } = new();

    internal IReadOnlyDictionary<Channel, string> Names => _names;

    /// <summary>Reads what a person typed.</summary>
    /// <param name="pairs">Each CHANNEL=SIGNAL, or several with commas between them.</param>
    /// <exception cref="BadInputException">A pair is none, or a channel is unknown or named twice.</exception>
    public static SignalMap Parse(IEnumerable<string> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        var map = new SignalMap();
        foreach (var pair in pairs.SelectMany(text => text.Split(',')))
        {
            if (pair.Split('=', 2, StringSplitOptions.TrimEntries) is not [var channelName, { Length: > 0 } signal] || !Channels.TryParse(channelName, out var channel))
            {
                throw new BadInputException(Option, $"expected CHANNEL=SIGNAL with a channel of {Channels.Names}, found '{pair}'", "Correct the option and run again");
            }

            if (!map._names.TryAdd(channel, signal))
            {
                throw new BadInputException(Option, $"expected each channel once, found '{channelName}' twice", "Name one signal for it");
            }
        }

        return map;
    }
}
