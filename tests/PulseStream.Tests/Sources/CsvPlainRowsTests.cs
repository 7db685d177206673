using System.Globalization;
using CsCheck;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Sources;

/// <summary>Rows of plain numbers are read in a way of their own; a blank before its first number takes a row out of it.</summary>
public sealed class CsvPlainRowsTests
{
    private static readonly Gen<string> Counts = Gen.Frequency(
        (20, Gen.Int[0, 262_143].Select(Text)),
        (4, Gen.Select(Gen.Int[0, 9_999_999], Gen.Int[0, 9_999_999], (whole, part) => $"{Text(whole)}.{Text(part)}")),
        (4, Gen.Long[0, long.MaxValue].Select(Text)),
        (1, OneOf("", ".", "7.", ".5", "007", "12345678.5", "1.12345678", "-4", "-0", "+3", "4e2", "x", "1\0", "NaN")));

    [Fact]
    public void PlainRowsReadAsAnyOtherRows() =>
        Gen.Select(Gen.Frequency((30, Gen.Const(1L)), (1, Gen.Long[-3, 40])), Counts, Counts, OneOf("\n", "\r\n"), Gen.Frequency((40, Gen.Const("")), (1, OneOf("\n", ",5\n"))))
            .Array[0, 150]
            .Sample(rows => Reads("sample,red,infrared", Counted(rows.Select(row => row.Item1), rows.Select(row => $",{row.Item2},{row.Item3}{row.Item4}{row.Item5}"), Text)));

    [Fact]
    public void TimesAloneReadAsAnyOtherTimes() =>
        Gen.Select(Gen.Frequency((30, Gen.Const(1L)), (1, Gen.Long[-3, 40])), Counts)
            .Array[50, 150]
            .Sample(rows => Reads("time_s,infrared", Counted(rows.Select(row => row.Item1), rows.Select(row => $",{row.Item2}\n"), counter => $"{counter / 100}.{counter % 100:00}")));

    [Fact]
    public void RowsWithSignsAndNotesReadAsAnyOtherRows() =>
        Gen.Select(Counts, OneOf("", "-", "--", "+"), Counts, OneOf("", "ok", "a note that is longer than any number", "\r", " x"), OneOf("\n", "\r\n"))
            .Array[0, 150]
            .Sample(rows => Reads("red,infrared,note,pleth,room", [.. rows.Select(row => $"7,{row.Item1},{row.Item4},{row.Item2}{row.Item3},{row.Item4}{row.Item5}")]));

    [Fact]
    public void EveryColumnOfAPlainRowArrivesInItsPlace()
    {
        var reading = CsvReading.Of("accel_z,note,accel_y,accel_x,pleth,ambient,infrared,red,room\n" + string.Concat(Enumerable.Repeat("-9.81,,-2,3.5,-4,5,6,7,x y\r\n", 90)), 100);
        Assert.Equal(90, reading.Samples.Count());
        Assert.All(reading.Samples, row => Assert.Equal(new Sample(7, 6, 5, -4, 3.5, -2, -9.81), row.Sample));
    }

    [Theory]
    [InlineData("4.5", "sample counter not a whole number")]
    [InlineData("4,1,2\n\n5", "wrong number of fields")]
    public void WhatIsAmissAmongPlainRowsIsToldWithItsLine(string counter, string words)
    {
        var rows = string.Concat(Enumerable.Range(6, 60).Select(at => $"{at},140000,150000\n"));
        var reading = CsvReading.Of($"sample,red,infrared\n0,140000,150000\n1,140000,150000\n2,140000,150000\n3,140000,150000\n{counter},140000,150000\n" + rows, 100);
        Assert.Equal(1, reading.Tally.RefusedRows);
        Assert.Contains(words, reading.Said[0], StringComparison.Ordinal);
        Assert.StartsWith(counter.Contains('\n', StringComparison.Ordinal) ? "night.csv, line 7:" : "night.csv, line 6:", reading.Said[0], StringComparison.Ordinal);
    }

    private static string[] Counted(IEnumerable<long> steps, IEnumerable<string> rest, Func<long, string> stamp)
    {
        var counter = 5L;
        return [.. steps.Zip(rest, (step, text) => stamp(counter = Math.Max(0, counter + step)) + text)];
    }

    private static bool Reads(string header, string[] lines)
    {
        var tail = string.Concat(Enumerable.Repeat('\n', 200));
        var plain = CsvReading.Of($"{header}\n{string.Concat(lines)}{tail}", 100);
        var dressed = CsvReading.Of($"{header}\n{string.Concat(lines.Select(line => $" {line}"))}{tail}", 100);
        return plain.Tally == dressed.Tally && plain.Samples.SequenceEqual(dressed.Samples) && plain.Said.SequenceEqual(dressed.Said, StringComparer.Ordinal)
            && plain.Failure?.Message == dressed.Failure?.Message;
    }

    private static Gen<string> OneOf(params string[] texts) => Gen.Int[0, texts.Length - 1].Select(at => texts[at]);

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Text(long value) => value.ToString(CultureInfo.InvariantCulture);
}
