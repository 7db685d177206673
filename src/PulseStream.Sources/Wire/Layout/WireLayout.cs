using PulseStream.Samples;

namespace PulseStream.Sources.Wire.Layout;

/// <summary>What an instrument says over a serial line: read from a file by <see cref="WireLayoutFile"/>.</summary>
public sealed class WireLayout
{
    internal WireLayout(string name, SampleRate rate, LineSettings line, double? fullScaleCounts, SampleColumns columns, TextLayout? text, BinaryLayout? binary) =>
        (Name, Rate, Line, FullScaleCounts, Columns, Text, Binary) = (name, rate, line, fullScaleCounts, columns, text, binary);

    /// <summary>What the instrument is called.</summary>
    public string Name { get; }

    /// <summary>Its sample rate.</summary>
    public SampleRate Rate { get; }

    /// <summary>How bits travel.</summary>
    public LineSettings Line { get; }

    /// <summary>The converter's largest count; null where not told.</summary>
    public double? FullScaleCounts { get; }

    /// <summary>Which values its samples carry.</summary>
    public SampleColumns Columns { get; }

    /// <summary>Its lines; null where it sends frames.</summary>
    internal TextLayout? Text { get; }

    /// <summary>Its frames; null where it sends lines.</summary>
    internal BinaryLayout? Binary { get; }
}
