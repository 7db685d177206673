using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>The last seconds of smoothed bins, infrared and red in turn, and the white noise that smoothing took away.</summary>
internal sealed class SmoothedBins
{
    // A gap of a tenth of a second can hide the front of a beat.
    private const double HiddenBeatSeconds = 0.1;

    // Four times the noise; noise itself differs by a few percent between such windows, a fast front makes less.
    private const double JerkShare = 16;

    // Bins between two moves of the newest ones to the buffer's start: a second's, so that most are smoothed together.
    private const int Stride = 64;
    private readonly SmoothingKernel kernel;
    private readonly Vector128<double>[] raw;
    private readonly Vector128<double>[] smoothed;
    private readonly NoiseSums[] noise;
    private readonly int longBridge;
    private Bin last;
    private NoiseSums noiseOfSecond;
    private int rawCount;
    private int smoothedTo;
    private int next;
    private long second;

    public SmoothedBins(SignalDesign design)
    {
        kernel = design.Kernel;
        raw = new Vector128<double>[kernel.Taps.Length + Stride];
        smoothed = new Vector128<double>[design.LongestWindowBins];
        noise = new NoiseSums[design.Options.LongestWindowSeconds];
        Gaps = new(design.BinRateHz);
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

    /// <summary>Bridged gaps that can hide a beat.</summary>
    public BridgedGaps Gaps { get; }

    /// <summary>Adds a bin; missing ones between it and the last are bridged by straight lines.</summary>
    public void Push(in Bin bin)
    {
        if (!IsEmpty)
        {
            var before = last;
            var distance = bin.Index - before.Index;
            if (distance > longBridge)
            {
                Gaps.Add(before.Index, bin.Index);
            }

            for (var step = 1; step < distance; step++)
            {
                var share = (double)step / distance;
                PushOne(new(before.Index + step, before.Light + ((bin.Light - before.Light) * share)));
            }
        }

        PushOne(bin);
    }

    /// <summary>Adds bins without a gap between them.</summary>
    /// <param name="first">Index of the first.</param>
    /// <param name="lights">Logarithms of infrared and red of each.</param>
    public void Push(long first, ReadOnlySpan<Vector128<double>> lights)
    {
        Push(new(first, lights[0]));
        for (var rest = lights[1..]; !rest.IsEmpty;)
        {
            MakeRoom();
            var length = Math.Min(raw.Length - rawCount, rest.Length);
            rest[..length].CopyTo(raw.AsSpan(rawCount));
            rawCount += length;
            rest = rest[length..];
        }

        last = new(first + lights.Length - 1, lights[^1]);
    }

    /// <summary>A second of signal is over: its noise is kept apart, so that a window knows its own.</summary>
    public void EndSecond()
    {
        noise[second % noise.Length] = noiseOfSecond;
        noiseOfSecond = default;
        second++;
    }

    /// <summary>White noise of one bin over the last whole seconds.</summary>
    public WhiteNoise NoiseOver(int windowSeconds)
    {
        var sums = noiseOfSecond;
        for (var back = 1; back < windowSeconds && back <= second; back++)
        {
            sums += noise[(second - back) % noise.Length];
        }

        return sums.Over(kernel.RestNoiseGain);
    }

    /// <summary>Whether a window begins with a jerk that its newest seconds are free of: what smoothing takes away from a jerk passes for noise, in which any disagreement hides.</summary>
    /// <param name="windowSeconds">Length of the window.</param>
    /// <param name="newestSeconds">Length of its newest part.</param>
    public bool HasJerk(int windowSeconds, int newestSeconds) => NoiseOver(windowSeconds).Infrared > JerkShare * NoiseOver(newestSeconds).Infrared;

    /// <summary>Whether there is a jerk anywhere in a window: two of its seconds, in which any heart beats once, are far noisier than two others.</summary>
    /// <param name="windowSeconds">Length of the window.</param>
    public bool HasJerk(int windowSeconds)
    {
        double least = double.PositiveInfinity, most = 0;
        for (var back = 0; back + 1 < windowSeconds && back + 1 <= second; back += 2)
        {
            var sums = (back == 0 ? noiseOfSecond : noise[(second - back) % noise.Length]) + noise[(second - back - 1) % noise.Length];
            var variance = sums.Over(kernel.RestNoiseGain).Infrared;
            least = Math.Min(least, variance);
            most = Math.Max(most, variance);
        }

        return most > JerkShare * least;
    }

    /// <summary>Copies the newest bins, oldest first.</summary>
    public void CopyNewest(Span<double> pairs)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        var start = next - lanes.Length;
        start = start < 0 ? start + smoothed.Length : start;
        var head = Math.Min(lanes.Length, smoothed.Length - start);
        smoothed.AsSpan(start, head).CopyTo(lanes);
        smoothed.AsSpan(0, lanes.Length - head).CopyTo(lanes[head..]);
    }

    /// <summary>Forgets everything.</summary>
    public void Restart()
    {
        rawCount = 0;
        smoothedTo = 0;
        Gaps.Clear();
        Count = 0;
        next = 0;
        second = 0;
        noiseOfSecond = default;
    }

    /// <summary>Smooths the bins that were pushed since the last time. Until then they are in nothing that is told of the smoothed ones; together they cost a third of what they cost one by one.</summary>
    public void Smooth()
    {
        var taps = kernel.Taps.Length;
        var sums = noiseOfSecond;
        for (var end = Math.Max(smoothedTo + 1, taps); end <= rawCount; end++)
        {
            var window = raw.AsSpan(end - taps, taps);
            var light = kernel.Smooth(window);
            sums.Add(window[kernel.Half] - light);
            smoothed[next] = light;
            next = next + 1 < smoothed.Length ? next + 1 : 0;
            Count++;
        }

        noiseOfSecond = sums;
        smoothedTo = rawCount;
    }

    private void PushOne(in Bin bin)
    {
        MakeRoom();
        last = bin;
        raw[rawCount++] = bin.Light;
    }

    private void MakeRoom()
    {
        if (rawCount == raw.Length)
        {
            Smooth();
            rawCount = kernel.Taps.Length - 1;
            smoothedTo = rawCount;
            raw.AsSpan(raw.Length - rawCount).CopyTo(raw);
        }
    }
}
