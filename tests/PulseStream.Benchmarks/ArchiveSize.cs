namespace PulseStream.Benchmarks;

/// <summary>Prints the bytes of each file of a sealed session of ten minutes, and their bytes per sample.</summary>
internal static class ArchiveSize
{
    public static int Print()
    {
        var archive = Directory.CreateTempSubdirectory("pulsestream-size-").FullName;
        try
        {
            var files = new DirectoryInfo(new TenMinutes().WriteTo(archive)).GetFiles();
            foreach (var file in files.OrderBy(file => file.Name, StringComparer.Ordinal))
            {
                Print(file.Name, file.Length);
            }

            Print("session", files.Sum(file => file.Length));
        }
        finally
        {
            Directory.Delete(archive, recursive: true);
        }

        return 0;
    }

    private static void Print(string name, long bytes) =>
        Console.WriteLine($"{name}: {bytes} bytes, {(double)bytes / TenMinutes.SampleCount:F3} bytes per sample");
}
