namespace PulseStream.Signal;

/// <summary>Averages the logarithms of both lights over the samples of a bin; a missing sample is missing from both and so leaves their ratio alone.</summary>
internal sealed class BinAverager(int samplesPerBin)
{
    private long bin = -1;
    private double infraredSum;
    private double redSum;
    private int count;

    /// <summary>Adds a sample; true when its bin, or the one before it, is complete.</summary>
    public bool TryStep(long index, double infrared, double red, out Bin complete)
    {
        var next = index / samplesPerBin;
        complete = default;
        var isComplete = false;
        if (next != bin)
        {
            isComplete = TryTake(out complete);
            bin = next;
        }

        infraredSum += infrared;
        redSum += red;
        count++;
        if (!isComplete && index - (bin * samplesPerBin) == samplesPerBin - 1)
        {
            isComplete = TryTake(out complete);
        }

        return isComplete;
    }

    /// <summary>Forgets a bin begun.</summary>
    public void Restart()
    {
        count = 0;
        infraredSum = 0;
        redSum = 0;
        bin = -1;
    }

    private bool TryTake(out Bin complete)
    {
        complete = count > 0 ? new(bin, infraredSum / count, redSum / count) : default;
        var isComplete = count > 0;
        infraredSum = 0;
        redSum = 0;
        count = 0;
        return isComplete;
    }
}
