using System.Text.RegularExpressions;

namespace PulseStream.Sources.Signals;

/// <summary>What the name and the unit of a signal say of it (common practice in the names of plethysmograms and lights).</summary>
internal static partial class SignalNames
{
    /// <summary>The channel that a name and a unit stand for; null where they stand for none.</summary>
    public static Channel? ChannelOf(string name, string unit)
    {
        // Numerics of a monitor carry the same words and a percent sign; a waveform of them says that it is one.
        if (Numeric().IsMatch(name) && !Wave().IsMatch(name))
        {
            return null;
        }

        return Acceleration().Match(name) is { Success: true } acceleration ? AxisOf(acceleration, unit)
            : Infrared().IsMatch(name) ? Channel.Infrared
            : Red().IsMatch(name) ? Channel.Red
            : Ambient().IsMatch(name) ? Channel.Ambient
            : Wave().IsMatch(name) ? Channel.Pleth
            : null;
    }

    /// <summary>Factor from a unit of acceleration to m/s²; 1 for every other unit.</summary>
    public static double ScaleOf(Channel channel, string unit) => channel < Channel.AccelerationX ? 1 : unit.Trim().ToUpperInvariant() switch
    {
        // Standard gravity, CGPM 1901.
        "G" or "[G]" => 9.80665,
        "MG" or "M[G]" => 9.80665e-3,
        _ => 1,
    };

    private static Channel? AxisOf(Match match, string unit) => unit.Contains("deg", StringComparison.OrdinalIgnoreCase)
        ? null
        : match.Groups["axis"].ValueSpan[0] switch
        {
            'x' or 'X' => Channel.AccelerationX,
            'y' or 'Y' => Channel.AccelerationY,
            _ => Channel.AccelerationZ,
        };

    [GeneratedRegex(@"(?<![a-z])a(cc(el(eration)?)?)?(ero)?[ _.\-]*(?<axis>[xyz])(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Acceleration();

    [GeneratedRegex(@"infra[ _\-]*red|(?<![a-z])n?ir(?![a-z])|(?<![0-9])(880|890|895|900|905|910|925|940|950) ?(nm)?(?![0-9])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Infrared();

    [GeneratedRegex(@"(?<![a-z])red(?![a-z])|(?<![0-9])(650|655|660|663|665) ?(nm)?(?![0-9])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Red();

    [GeneratedRegex(@"ambient|(?<![a-z])dark(?![a-z])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Ambient();

    [GeneratedRegex(@"pleth|ppg|(spo2|sao2).*wave", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Wave();

    [GeneratedRegex(@"spo2|sao2|perf", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Numeric();
}
