using BenchmarkDotNet.Attributes;

namespace PulseStream.Benchmarks;

/// <summary>
/// Ten minutes appended, sealed and removed again, against a loop that writes the same two lights as plain doubles and
/// waits for the disk too. One operation is one sample.
/// </summary>
[MemoryDiagnoser]
[OperationsPerSecond]
public class ArchiveWrite
{
    private readonly TenMinutes session = new();
    private string folder = "";

    [GlobalSetup]
    public void MakeFolder() => folder = Directory.CreateTempSubdirectory("pulsestream-bench-").FullName;

    [GlobalCleanup]
    public void RemoveFolder() => Directory.Delete(folder, recursive: true);

    [Benchmark(Baseline = true, OperationsPerInvoke = TenMinutes.SampleCount)]
    public void PlainDoubles()
    {
        var path = Path.Combine(folder, "plain.bin");
        using (var stream = new FileStream(path, FileMode.Create))
        using (var writer = new BinaryWriter(stream))
        {
            foreach (ref readonly var sample in session.Samples.AsSpan())
            {
                writer.Write(sample.Red);
                writer.Write(sample.Infrared);
            }

            stream.Flush(flushToDisk: true);
        }

        File.Delete(path);
    }

    // The folder goes each time: a session whose name is taken would look for another one.
    [Benchmark(OperationsPerInvoke = TenMinutes.SampleCount)]
    public void AppendAndSeal() => Directory.Delete(session.WriteTo(folder), recursive: true);
}
