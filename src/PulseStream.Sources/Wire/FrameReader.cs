using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Wire;

/// <summary>Turns whole frames into samples.</summary>
internal sealed class FrameReader
{
    private readonly BinaryLayout _layout;
    private readonly WireField? _counter;
    private readonly WireField[] _values;
    private readonly SamplePlacement _placement;
    private readonly Sample[] _samples;
    private readonly double[] _row = new double[(int)CsvColumn.Ignored];

    public FrameReader(BinaryLayout layout, SamplePlacement placement)
    {
        (_layout, _placement) = (layout, placement);
        _counter = layout.Fields.FirstOrDefault(field => field.Column == CsvColumn.Sample);
        _values = [.. layout.Fields.Where(field => field.Column is not (CsvColumn.Sample or CsvColumn.Ignored or CsvColumn.Time))];
        _samples = new Sample[layout.SampleCount];
        Array.Fill(_row, double.NaN);
    }

    public bool IsProven => _layout.Checksum.Kind != ChecksumKind.None;

    /// <summary>Whether the checksum is right.</summary>
    /// <param name="frame">As long as the layout says.</param>
    public bool Holds(ReadOnlySpan<byte> frame) => _layout.Checksum.Holds(frame);

    /// <summary>Takes a frame that <see cref="Holds"/>.</summary>
    /// <param name="frame">As long as the layout says.</param>
    /// <param name="arrivalSeconds">When its last byte came.</param>
    public void Take(ReadOnlySpan<byte> frame, double arrivalSeconds)
    {
        for (var i = 0; i < _samples.Length; i++)
        {
            foreach (var field in _values)
            {
                _row[(int)field.Column] = field.ValueOf(frame, _layout.BaseOf(field, i));
            }

            if (SampleRow.HasNegativeCounts(_row))
            {
                Lose(WireFault.NegativeCounts, 1, 1);
                return;
            }

            _samples[i] = SampleRow.SampleOf(_row);
        }

        Place(frame, arrivalSeconds);
    }

    public void Lose(WireFault fault, long refused, long missingFrames) => _placement.Lose(fault, refused, missingFrames * _samples.Length);

    private void Place(ReadOnlySpan<byte> frame, double arrivalSeconds)
    {
        if (_counter is null || _counter.IsPerFrame || _samples.Length == 1)
        {
            _placement.Take(_samples, CounterOf(frame, 0), arrivalSeconds);
            return;
        }

        // A number of its own for each sample.
        for (var i = 0; i < _samples.Length; i++)
        {
            _placement.Take(_samples.AsSpan(i, 1), CounterOf(frame, i), arrivalSeconds);
        }
    }

    private long CounterOf(ReadOnlySpan<byte> frame, int sample) =>
        _counter is null ? 0 : _counter.RawOf(frame, _layout.BaseOf(_counter, sample)) * (long)_counter.Scale;
}
