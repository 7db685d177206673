using PulseStream.Samples;

namespace PulseStream.Sources.Signals;

/// <summary>Which signals of a file are read, all at one rate.</summary>
internal sealed record SignalChoice(IReadOnlyList<ChosenSignal> Signals, double RateHz)
{
    // Beyond this two rates are no longer one rate in two roundings.
    private const double RateSlack = 1e-9;

    /// <summary>Columns of the samples.</summary>
    public SampleColumns Columns => Channels.ColumnsOf([.. Signals.Select(signal => signal.Channel)]);

    /// <summary>Chooses by what a person named, else by names and units.</summary>
    /// <param name="signals">Of the file.</param>
    /// <param name="map">What a person named.</param>
    /// <param name="source">Name of the file, for messages.</param>
    /// <param name="say">Hears what was left out.</param>
    /// <exception cref="BadInputException">There is neither infrared nor a plethysmogram, or rates differ.</exception>
    public static SignalChoice Of(IReadOnlyList<SignalDescription> signals, SignalMap map, string source, Action<string>? say)
    {
        var found = map.Names.Count > 0 ? Named(signals, map, source) : ByName(signals, source, say);
        var light = found.Where(signal => signal.Channel is Channel.Infrared or Channel.Pleth).OrderBy(signal => signal.Channel).FirstOrDefault()
            ?? throw NoLight(signals, source);
        var rate = signals[light.Index].RateHz;
        var kept = new List<ChosenSignal>();
        foreach (var signal in WithoutPleth(found))
        {
            if (Math.Abs(signals[signal.Index].RateHz - rate) <= RateSlack * rate)
            {
                kept.Add(signal);
            }
            else if (signal.Channel == Channel.Red)
            {
                throw new BadInputException(source, $"red has {signals[signal.Index].RateHz} samples a second, infrared {rate}", "Give a recording with both lights at one rate, or name other signals with --map");
            }
            else
            {
                say?.Invoke($"{source}: {signals[signal.Index].Name} is left out: it has {signals[signal.Index].RateHz} samples a second, the light {rate}.");
            }
        }

        return SampleRate.IsMeasured(rate)
            ? new SignalChoice(kept, rate)
            : throw new BadInputException(source, $"{signals[light.Index].Name} has {rate:0.###} samples a second, expected {SampleRate.MeasuredRange}", "Give a recording of the light itself, not of numbers made of it");
    }

    // Where the light itself is there, a wave that was made of it adds nothing.
    private static IEnumerable<ChosenSignal> WithoutPleth(IReadOnlyList<ChosenSignal> found) =>
        found.Where(signal => signal.Channel != Channel.Pleth || !found.Any(other => other.Channel == Channel.Infrared));

    private static List<ChosenSignal> Named(IReadOnlyList<SignalDescription> signals, SignalMap map, string source) =>
    [
        .. map.Names.Select(pair =>
        {
            var index = signals.Select(signal => signal.Name).ToList().FindIndex(name => string.Equals(name.Trim(), pair.Value, StringComparison.OrdinalIgnoreCase));
            return index >= 0
                ? Chosen(signals, index, pair.Key)
                : throw new BadInputException(source, $"there is no signal '{pair.Value}', only {NamesOf(signals)}", "Correct --map and run again");
        }),
    ];

    private static List<ChosenSignal> ByName(IReadOnlyList<SignalDescription> signals, string source, Action<string>? say)
    {
        var found = new List<ChosenSignal>();
        for (var i = 0; i < signals.Count; i++)
        {
            if (SignalNames.ChannelOf(signals[i].Name, signals[i].Unit) is not { } channel)
            {
                continue;
            }

            if (found.Exists(other => other.Channel == channel))
            {
                say?.Invoke($"{source}: {signals[i].Name} is left out: another signal before it carries {Channels.NameOf(channel)}; --map chooses.");
                continue;
            }

            found.Add(Chosen(signals, i, channel));
        }

        return found;
    }

    private static ChosenSignal Chosen(IReadOnlyList<SignalDescription> signals, int index, Channel channel) =>
        new(index, channel, SignalNames.ScaleOf(channel, signals[index].Unit));

    private static BadInputException NoLight(IReadOnlyList<SignalDescription> signals, string source) => new(
        source,
        $"no signal is named like infrared light or a plethysmogram: {NamesOf(signals)}",
        "Name one, such as --map infrared=NAME or --map pleth=NAME");

    private static string NamesOf(IReadOnlyList<SignalDescription> signals) =>
        signals.Count == 0 ? "there is none" : string.Join(", ", signals.Select(signal => $"'{signal.Name}'"));
}
