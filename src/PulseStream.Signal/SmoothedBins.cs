namespace PulseStream.Signal;

/// <summary>The last seconds of smoothed bins, infrared and red in turn, and the white noise that smoothing took away.</summary>
internal sealed class SmoothedBins
{
    // A gap of a tenth of a second can hide the front of a beat.
    private const double HiddenBeatSeconds = 0.1;
    private readonly SmoothingKernel kernel;
    private readonly double[] raw;
    private readonly double[] smoothed;
    private readonly double[] noiseSums;
    private readonly int capacity;
    private readonly int seconds;
    private readonly int longBridge;
    private Bin last;
    private int rawCount;
    private long second;
    private long lastBridge;

    public SmoothedBins(SignalDesign design)
    {
        kernel = design.Kernel;
        capacity = design.LongestWindowBins;
        seconds = design.Options.LongestWindowSeconds;
        raw = new double[2 * kernel.Taps.Length];
        smoothed = new double[2 * capacity];
        noiseSums = new double[4 * seconds];
        longBridge = Math.Max(2, (int)(HiddenBeatSeconds * design.BinRateHz));
        Restart();
    }

    /// <summary>Smoothed bins since the last restart.</summary>
    public long Count { get; private set; }

    /// <summary>Index of the newest smoothed bin.</summary>
    public long NewestBin => last.Index - kernel.Half;

    /// <summary>Index of the newest bin received; meaningful once something has been pushed.</summary>
    public Bin Last => last;

    /// <summary>Whether anything has been received since the last restart.</summary>
    public bool IsEmpty => rawCount == 0;

    /// <summary>Whether a bridged gap that can hide a beat lies within so many of the newest bins.</summary>
    public bool HasBridge(int newestBins) => lastBridge > NewestBin - newestBins;

    /// <summary>Adds a bin; missing ones between it and the last are bridged by straight lines.</summary>
    public void Push(in Bin bin)
    {
        if (!IsEmpty)
        {
            var before = last;
            var distance = bin.Index - before.Index;
            lastBridge = distance > longBridge ? bin.Index : lastBridge;
            for (var step = 1; step < distance; step++)
            {
                var share = (double)step / distance;
                PushOne(new(before.Index + step, Between(before.Infrared, bin.Infrared, share), Between(before.Red, bin.Red, share)));
            }
        }

        PushOne(bin);
    }

    /// <summary>A second of signal is over: its noise is kept apart, so that a window knows its own.</summary>
    public void EndSecond()
    {
        second++;
        noiseSums.AsSpan((int)(second % seconds) * 4, 4).Clear();
    }

    /// <summary>White noise of one bin over the last whole seconds.</summary>
    public WhiteNoise NoiseOver(int windowSeconds)
    {
        double infrared = 0, red = 0, common = 0, count = 0;
        for (var back = 0; back < windowSeconds; back++)
        {
            var at = (int)((second - back + seconds) % seconds) * 4;
            infrared += noiseSums[at];
            red += noiseSums[at + 1];
            common += noiseSums[at + 2];
            count += noiseSums[at + 3];
        }

        var scale = 1 / (Math.Max(count, 1) * kernel.RestNoiseGain);
        return new(infrared * scale, red * scale, common * scale);
    }

    /// <summary>Copies the newest bins, oldest first.</summary>
    public void CopyNewest(Span<double> pairs)
    {
        var start = (int)((Count - (pairs.Length / 2)) % capacity) * 2;
        var head = Math.Min(pairs.Length, smoothed.Length - start);
        smoothed.AsSpan(start, head).CopyTo(pairs);
        smoothed.AsSpan(0, pairs.Length - head).CopyTo(pairs[head..]);
    }

    /// <summary>Forgets everything.</summary>
    public void Restart()
    {
        rawCount = 0;
        lastBridge = long.MinValue;
        Count = 0;
        second = 0;
        noiseSums.AsSpan().Clear();
    }

    private static double Between(double from, double to, double share) => from + ((to - from) * share);

    private void PushOne(in Bin bin)
    {
        last = bin;
        var taps = kernel.Taps;
        var slot = rawCount % taps.Length * 2;
        raw[slot] = bin.Infrared;
        raw[slot + 1] = bin.Red;
        rawCount = rawCount < (2 * taps.Length) - 1 ? rawCount + 1 : taps.Length;
        if (rawCount >= taps.Length)
        {
            Smooth();
        }
    }

    private void Smooth()
    {
        var taps = kernel.Taps;
        var oldest = rawCount % taps.Length;
        double infrared = 0, red = 0;
        for (var k = 0; k < taps.Length; k++)
        {
            var slot = (oldest + k) % taps.Length * 2;
            infrared += taps[k] * raw[slot];
            red += taps[k] * raw[slot + 1];
        }

        var centre = (oldest + kernel.Half) % taps.Length * 2;
        AddNoise(raw[centre] - infrared, raw[centre + 1] - red);
        var place = (int)(Count % capacity) * 2;
        smoothed[place] = infrared;
        smoothed[place + 1] = red;
        Count++;
    }

    private void AddNoise(double infrared, double red)
    {
        var sums = noiseSums.AsSpan((int)(second % seconds) * 4, 4);
        sums[0] += infrared * infrared;
        sums[1] += red * red;
        sums[2] += infrared * red;
        sums[3]++;
    }
}
