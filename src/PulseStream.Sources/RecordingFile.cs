using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Edf;
using PulseStream.Sources.Signals;
using PulseStream.Sources.Wfdb;

namespace PulseStream.Sources;

/// <summary>Opens a file of samples by what its name ends in: .hea or .dat for WFDB, .edf, else CSV.</summary>
public static class RecordingFile
{
    private const string HeaderEnding = ".hea";

    /// <summary>Opens a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">What is known beside it.</param>
    /// <param name="map">Which signal carries what, for formats whose signals have names of their own.</param>
    /// <param name="cancel">Ends the reading ahead.</param>
    /// <exception cref="BadInputException">It cannot be used.</exception>
    public static Recording Open(string path, CsvOptions options, SignalMap map, CancellationToken cancel) => FormatOf(path) switch
    {
        RecordingFormat.Wfdb => WfdbRecording.Open(HeaderOf(path), options, map),
        RecordingFormat.Edf => EdfRecording.Open(path, options, map),
        _ => CsvRecording.Open(path, options with { Map = map }, cancel),
    };

    /// <summary>The format that a file's name stands for; null where it stands for none of them.</summary>
    /// <param name="path">The file.</param>
    public static RecordingFormat? FormatOf(string path) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".HEA" or ".DAT" => RecordingFormat.Wfdb,
        ".EDF" => RecordingFormat.Edf,
        ".CSV" => RecordingFormat.Csv,
        ".PARQUET" => RecordingFormat.Parquet,
        _ => File.Exists(path) || !File.Exists(path + HeaderEnding) ? null : RecordingFormat.Wfdb,
    };

    // A record is named without an ending as well.
    private static string HeaderOf(string path) => File.Exists(path) || !File.Exists(path + HeaderEnding) ? Path.ChangeExtension(path, HeaderEnding) : path + HeaderEnding;
}
