using PulseStream.Sources.Live;

namespace PulseStream.Cli.Output;

/// <summary>What is said of a cable.</summary>
internal static class LinkWords
{
    public static string Of(string port, LinkChange change) => (change.State, change.Before) switch
    {
        (LinkState.Waiting, _) => $"{port}: open, waiting for the instrument's first byte.",
        (LinkState.Receiving, LinkState.Waiting) => $"{port}: the instrument sends.",
        (LinkState.Receiving, _) => $"{port}: back after {change.SilentSeconds:0.0} s; the session goes on, with the gap as missing samples.",
        (LinkState.Silent, LinkState.Lost) => $"{port}: open again, nothing has come yet.",
        (LinkState.Silent, _) => $"{port}: nothing has come for {change.SilentSeconds:0} s; check the instrument and its cable.",
        (LinkState.Lost, _) => $"{port}: the cable is out; the port is tried again until it is back.",
        _ => throw new ArgumentOutOfRangeException(nameof(change), change.State, "No state has no words."),
    };
}
