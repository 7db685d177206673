using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Wire.Framing;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Wire;

/// <summary>
/// Turns the bytes of an instrument into samples, however they are cut. Damage costs the frames that it touches, is
/// counted by cause, and never throws. It has no clock: when bytes came is told, and matters over gaps alone.
/// </summary>
public sealed class WireDecoder
{
    /// <summary>No block is longer, however much comes at once: a live view has 25 updates a second.</summary>
    public const double LongestBlockSeconds = 0.04;

    private readonly BlockBuilder _blocks;
    private readonly WireFaults _faults = new();
    private readonly SamplePlacement _placement;
    private readonly FrameFinder _finder;
    private double _lastArrival;

    /// <summary>Begins before the first byte.</summary>
    /// <param name="layout">What the instrument says.</param>
    public WireDecoder(WireLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        _blocks = new BlockBuilder(layout.Rate, LongestBlockSeconds);
        _placement = new SamplePlacement(layout.Rate, CounterOf(layout), IsProven(layout), _faults, _blocks);
        _finder = layout switch
        {
            { Text: { } text } => TextLines.Finder(text, _placement),
            { Binary: { Frame: FrameKind.Sync } binary } => new SyncFrames(binary, new FrameReader(binary, _placement)),
            _ => StuffedFrames.Finder(layout.Binary!, new FrameReader(layout.Binary!, _placement)),
        };
    }

    /// <summary>What has been counted; the arrival rate is known after a minute.</summary>
    public SampleTally Tally => _placement.Tally;

    /// <summary>Refused frames by cause, in words; empty where there are none.</summary>
    public string FaultWords => _faults.Words();

    /// <summary>Refused frames of a cause.</summary>
    /// <param name="fault">The cause.</param>
    public long FaultsOf(WireFault fault) => _faults[fault];

    /// <summary>Reads what came.</summary>
    /// <param name="bytes">Any number of bytes.</param>
    /// <param name="arrivalSeconds">When they came, in seconds of any steady clock.</param>
    public void Read(ReadOnlySpan<byte> bytes, double arrivalSeconds)
    {
        if (arrivalSeconds - _lastArrival >= SamplePlacement.GapSeconds)
        {
            _finder.Pause();
        }

        _lastArrival = arrivalSeconds;
        _finder.Read(bytes, arrivalSeconds);
        _placement.Arrivals.Estimate();
    }

    /// <summary>The line was closed: an unfinished frame is dropped, and what follows comes after a gap.</summary>
    public void Break()
    {
        _finder.Break();
        _placement.Break();
    }

    /// <summary>Nothing follows.</summary>
    public void Finish()
    {
        _finder.Break();
        _placement.End();
    }

    /// <summary>The next samples that are ready; null where there are none.</summary>
    public SampleBlock? TakeBlock()
    {
        if (_blocks.TakeFinished() is { } finished)
        {
            return finished;
        }

        _blocks.Finish();
        return _blocks.TakeFinished();
    }

    private static bool IsProven(WireLayout layout) => layout.Text?.HasChecksum ?? layout.Binary!.Checksum.Kind != ChecksumKind.None;

    private static CounterSpan? CounterOf(WireLayout layout)
    {
        if (layout.Text is { } text)
        {
            return text.Fields.Any(field => field.Column == CsvColumn.Sample) ? new CounterSpan(0, layout.Rate) : null;
        }

        return layout.Binary!.Fields.FirstOrDefault(field => field.Column == CsvColumn.Sample) is { } counter
            ? new CounterSpan((1L << counter.Bits) * (long)counter.Scale, layout.Rate)
            : null;
    }
}
