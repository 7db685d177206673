using PulseStream.Samples;
using PulseStream.Sources;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Tests.Sources;

/// <summary>Reads a file of any format to its end.</summary>
internal static class FileReading
{
    public static (Recording Recording, List<(long Index, Sample Sample)> Samples, List<string> Said) Of(string path, params string[] map)
    {
        var said = new List<string>();
        using var recording = RecordingFile.Open(path, new CsvOptions(Say: said.Add), SignalMap.Parse(map), CancellationToken.None);
        var all = new List<(long, Sample)>();
        Exception? failure = null;
        using (recording.Blocks(CancellationToken.None).Subscribe(block => all.AddRange(Archive.Sessions.Indexed(block)), problem => failure = problem))
        {
            return failure is null ? (recording, all, said) : throw failure;
        }
    }
}
