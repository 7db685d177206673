using PulseStream.Readings;

namespace PulseStream.Cli.Output.Text;

/// <summary>Gathers refused seconds in a row that have the same reasons into one line.</summary>
internal sealed class RefusedRun
{
    private UnusableSecond? _first;
    private long _lastSecond;

    /// <summary>Adds a second.</summary>
    /// <returns>The line of the run before it, where this second begins another; else null.</returns>
    public string? Add(UnusableSecond second)
    {
        var line = _first is { } first && (first.Reasons != second.Reasons || _lastSecond + 1 != second.SecondIndex) ? End() : null;
        _first ??= second;
        _lastSecond = second.SecondIndex;
        return line;
    }

    /// <summary>Ends the run that is under way.</summary>
    /// <returns>Its line; null where there is none.</returns>
    public string? End()
    {
        if (_first is not { } first)
        {
            return null;
        }

        _first = null;
        var time = first.SecondIndex == _lastSecond ? $"{_lastSecond} s" : $"{first.SecondIndex}–{_lastSecond} s";
        return Row.Of(time, $"refused: {string.Join(", ", WireNames.Of(first.Reasons))}");
    }
}
