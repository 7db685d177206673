using PulseStream.Sources.Signals;

namespace PulseStream.Sources.Edf;

/// <summary>How the values of a channel become 16-bit samples. The smallest one, -32768, stays free for what is missing.</summary>
/// <param name="PhysicalMin">As the header says it.</param>
/// <param name="PhysicalMax">As the header says it.</param>
internal sealed record EdfScale(string PhysicalMin, string PhysicalMax)
{
    /// <summary>Smallest sample.</summary>
    public const int DigitalMin = -32767;

    /// <summary>Largest sample.</summary>
    public const int DigitalMax = 32767;

    private const double Steps = DigitalMax - DigitalMin;

    private double Min { get; } = EdfNumber.Parse(PhysicalMin);

    private double Max { get; } = EdfNumber.Parse(PhysicalMax);

    /// <summary>The step from one sample to the next.</summary>
    public double Step => (Max - Min) / Steps;

    /// <summary>Exact where the values are whole and no more than 65,534 apart; else the range is divided evenly.</summary>
    public static EdfScale Of(ChannelRange range)
    {
        if (!range.IsKnown)
        {
            return new EdfScale("0", EdfNumber.Of(Steps));
        }

        var scale = Math.Pow(10, range.Decimals);
        var (low, high) = (Math.Floor(range.Min * scale) / scale, (Math.Floor(range.Min * scale) + Steps) / scale);
        if (high >= range.Max && EdfNumber.Parse(EdfNumber.Of(low)) == low && EdfNumber.Parse(EdfNumber.Of(high)) == high)
        {
            return new EdfScale(EdfNumber.Of(low), EdfNumber.Of(high));
        }

        return new EdfScale(EdfNumber.Below(range.Min), EdfNumber.Above(Math.Max(range.Max, range.Min + 1)));
    }

    /// <summary>Whether every value of a channel reads back as it was.</summary>
    public bool IsExactFor(ChannelRange range) => !range.IsKnown || Math.Abs((Step * Math.Pow(10, range.Decimals)) - 1) < 1e-12;

    public short DigitalOf(double value) => double.IsFinite(value)
        ? (short)Math.Clamp(Math.Round(DigitalMin + (Steps * (value - Min) / (Max - Min))), DigitalMin, DigitalMax)
        : short.MinValue;
}
