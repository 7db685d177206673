using PulseStream.Archive;
using PulseStream.Cli.Commands;
using PulseStream.Samples;
using PulseStream.Sources;

namespace PulseStream.Cli.Inputs;

/// <summary>The recording to convert, which a format of whole numbers reads twice: first for limits, then for samples.</summary>
internal sealed class ConversionSource
{
    private readonly ConvertOrder _order;
    private readonly Stream _input;
    private readonly string _path;
    private bool _isOpened;

    /// <exception cref="BadInputException">There is not one recording.</exception>
    public ConversionSource(ConvertOrder order, Stream input)
    {
        (_order, _input) = (order, input);
        var paths = RecordingPaths.Expand(order.From, order.Say);
        _path = paths.Count == 1
            ? paths[0]
            : throw new BadInputException(order.From, $"expected one recording, found {paths.Count}", "Name one of them");
    }

    /// <summary>Opens it, the second time without a word.</summary>
    public OpenedRecording Open(CancellationToken cancel)
    {
        var known = _isOpened ? _order.Known with { Say = null } : _order.Known;
        if (_isOpened && _path == RecordingPaths.StandardInput)
        {
            throw new BadInputException(_path, "standard input can be read once, this format needs it twice", "Convert it to CSV first");
        }

        _isOpened = true;
        var opened = RecordingPaths.Open(_path, _input, known, _order.Map, cancel);
        if (opened.Recording is ShownRecording && !Path.GetExtension(_order.To).Equals(".json", StringComparison.OrdinalIgnoreCase))
        {
            throw new BadInputException(_path, "it holds finished readings of an instrument and no samples", "Convert it to .json, or copy its Parquet files");
        }

        return opened;
    }

    /// <summary>Reads it to the end.</summary>
    /// <exception cref="BadInputException">The recording as a whole cannot be used.</exception>
    public static void Read(Recording recording, Action<SampleBlock> take, CancellationToken cancel)
    {
        Exception? failure = null;
        using (recording.Blocks(cancel).Subscribe(take, problem => failure = problem))
        {
            if (failure is not null)
            {
                throw failure;
            }
        }
    }

    /// <summary>What the recording says, to stand beside its samples; nothing where nobody asked for it.</summary>
    public IReadOnlyList<RecordingNote> Notes(ConvertOrder order, CancellationToken cancel)
    {
        if (!order.HasAnnotations)
        {
            return [];
        }

        using var opened = Open(cancel);
        return RecordingFindings.Of(opened, cancel).Notes(opened.Recording.Header.Rate);
    }

    /// <summary>The first reading.</summary>
    public RecordingScan Scan(CancellationToken cancel)
    {
        using var opened = Open(cancel);
        var scan = new RecordingScan(opened.Recording.Header.Columns);
        Read(opened.Recording, scan.Add, cancel);
        return scan;
    }
}
