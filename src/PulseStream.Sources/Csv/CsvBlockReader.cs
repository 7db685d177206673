using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>Reads the rows of a recording into blocks, and judges its bad rows at the end.</summary>
internal sealed class CsvBlockReader
{
    // More than one bad row in twenty and the file is not what it says it is.
    private const int RowsPerBadRow = 20;

    private readonly LineReader _lines;
    private readonly string _source;
    private readonly CsvRowParser _parser;
    private readonly RowFaults _faults;
    private readonly BlockBuilder _blocks;
    private readonly RowPlacement _placement;
    private readonly PlainRows _plain;
    private readonly bool _hasCounter;
    private long? _firstCounter;
    private long _blankLines;
    private bool _ended;

    public CsvBlockReader(LineReader lines, CsvLayout layout, TimeScale scale, string source, Action<string>? say)
    {
        _lines = lines;
        _source = source;
        _parser = new CsvRowParser(layout);
        _faults = new RowFaults(source, say);
        _blocks = new BlockBuilder(scale.Rate);
        _hasCounter = layout.HasCounter;
        RowClock clock = layout.HasCounter ? new CounterClock(scale.Rate, () => _firstCounter)
            : layout.HasTime ? new TimeClock(scale)
            : new RowCountClock();
        _placement = new RowPlacement(clock, scale.Rate, _faults, _blocks);
        _plain = new PlainRows(layout, _placement);
    }

    public SampleTally Tally => _placement.Tally;

    /// <summary>The next block; null at the end and, once all that was read has been handed on, on cancellation.</summary>
    /// <exception cref="BadInputException">At the end: no good row, or more than 5 % bad rows.</exception>
    public SampleBlock? Next(CancellationToken cancel)
    {
        while (true)
        {
            if (_blocks.TakeFinished() is { } block)
            {
                return block;
            }

            if (_ended)
            {
                Judge(cancel);
                return null;
            }

            ReadPlainRows();
            if (!_blocks.HasFinished)
            {
                ReadLine(cancel);
            }
        }
    }

    // A blank line is a bad row where a row follows it.
    private void ReadPlainRows()
    {
        if (_blankLines == 0)
        {
            var (length, rows) = _plain.Take(_lines.Waiting, _blocks.Room);
            _lines.Pass(length, rows);
        }
    }

    private void ReadLine(CancellationToken cancel)
    {
        var kind = _lines.TryRead(cancel, out var line);
        if (kind == LineKind.End)
        {
            _ended = true;
            _placement.End();
            _blocks.Finish();
            _faults.SayCounts();
        }
        else if (kind == LineKind.Line && line.IsEmpty)
        {
            _blankLines++;
        }
        else
        {
            RefuseBlankLines();
            AddRow(kind, line);
        }
    }

    // Blank lines at the end are no rows; between rows each stands where a row should be.
    private void RefuseBlankLines()
    {
        for (; _blankLines > 0; _blankLines--)
        {
            _faults.Add(RowFault.FieldCount, _lines.LineNumber - _blankLines, "the line is blank");
            _placement.AddBad();
        }
    }

    private void AddRow(LineKind kind, ReadOnlySpan<byte> line)
    {
        CsvRow row = default;
        var fault = kind == LineKind.TooLong ? RowFault.LineTooLong : _parser.Parse(line, _lines.LineNumber, out row);
        if (fault == RowFault.None)
        {
            _placement.AddGood(row);
            return;
        }

        var detail = !_faults.IsFirst(fault) ? ""
            : fault == RowFault.LineTooLong ? $"more than {LineReader.LongestLine} bytes"
            : _parser.Explain(fault, line);
        _faults.Add(fault, _lines.LineNumber, detail);
        if (_hasCounter && Tally.Samples == 0 && kind == LineKind.Line)
        {
            _firstCounter ??= _parser.CounterOf(line);
        }

        _placement.AddBad();
    }

    private void Judge(CancellationToken cancel)
    {
        if (cancel.IsCancellationRequested)
        {
            return;
        }

        var tally = Tally;
        var rows = tally.Samples + tally.RefusedRows + tally.Repeats;
        if (rows == 0)
        {
            throw CsvFailures.NoRows(_source);
        }

        if (tally.Samples == 0)
        {
            throw CsvFailures.NoGoodRow(_source, _faults);
        }

        if (tally.RefusedRows * RowsPerBadRow > rows)
        {
            throw CsvFailures.TooManyBadRows(_source, rows, _faults);
        }
    }
}
