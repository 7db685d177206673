namespace PulseStream.Signal;

/// <summary>The stretch of time that a pulse rate is the mean of, in bins since the recording's start.</summary>
/// <param name="From">Its start: the averaging time before the end, or where beats can first be believed.</param>
/// <param name="SeenTo">Up to here a beat would have shown.</param>
/// <param name="End">The end of the second that is told.</param>
/// <param name="SoundFrom">From where beats can be believed, whether in the window or before it.</param>
/// <param name="UnseenShare">Share of the averaging time that lies before <paramref name="From"/>, 0 to 1.</param>
internal readonly record struct RateWindow(double From, double SeenTo, double End, double SoundFrom, double UnseenShare)
{
    /// <summary>The window that ends with a second.</summary>
    /// <param name="seenTo">Up to here a beat would have shown.</param>
    /// <param name="end">The end of the second.</param>
    /// <param name="soundFrom">From where beats can be believed.</param>
    /// <param name="averagedBins">The averaging time.</param>
    public static RateWindow Of(double seenTo, double end, double soundFrom, double averagedBins)
    {
        var from = Math.Max(end - averagedBins, Math.Min(soundFrom, seenTo));
        return new(from, seenTo, end, soundFrom, 1 - ((end - from) / averagedBins));
    }
}
