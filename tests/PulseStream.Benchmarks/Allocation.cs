namespace PulseStream.Benchmarks;

/// <summary>Prints what a signal machine in steady state allocates, bytes per sample; 1 where that is not 0.</summary>
internal static class Allocation
{
    private const int Seconds = 600;

    public static int Print() => PrintAt(100) + PrintAt(250) == 0 ? 0 : 1;

    private static long PrintAt(double hz)
    {
        var signal = SteadySignal.At(hz);
        var samples = TwoLightSignal.At(hz, Seconds);
        var before = GC.GetAllocatedBytesForCurrentThread();
        SteadySignal.Feed(signal, samples);
        var bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        Console.WriteLine($"{hz} Hz: {(double)bytes / samples.Length} bytes per sample over {samples.Length} samples");
        return bytes;
    }
}
