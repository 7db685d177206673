namespace PulseStream.Tests.Cli;

/// <summary>A folder that goes away with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("pulsestream-cli-").FullName;

    public string this[string name] => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
