using CsCheck;
using PulseStream.Archive.Columns;
using PulseStream.Archive.Journaling;
using PulseStream.Archive.Results;
using Xunit;

namespace PulseStream.Tests.Archive;

/// <summary>Results in the journal come back as they went in, and what is cut is noticed.</summary>
public sealed class RowPackTests
{
    private static readonly Gen<Cell[]> Row =
        from whole in Gen.Long[0, 1L << 40]
        from level in Gen.String
        from text in Gen.String
        from minutes in Gen.OneOf(Gen.Int.Select(n => (double)n), Gen.Const(double.NaN))
        from because in Gen.String
        select new Cell[] { whole, Text(level), Text(text), minutes, Text(because) };

    [Fact]
    public void RowsComeBackAsTheyWent() => Row.Array[0, 20].Sample(rows =>
    {
        using var pack = new RowPack();
        foreach (var row in rows)
        {
            pack.Add(AdviceRows.Table, row);
        }

        Assert.Equal(rows, RowPack.RowsOf(AdviceRows.Table, pack.Take()));
        Assert.Empty(pack.Take());
    });

    [Fact]
    public void APackThatEndsWithinARowIsNoPack()
    {
        using var pack = new RowPack();
        pack.Add(AdviceRows.Table, [1, "recheck", "Rest, then measure again.", 30, "low"]);
        var whole = pack.Take();
        for (var length = 1; length < whole.Length; length++)
        {
            Assert.ThrowsAny<IOException>(() => RowPack.RowsOf(AdviceRows.Table, whole[..length]));
        }
    }

    // What is no text in UTF-8 is never told by the program, and does not come back.
    private static string Text(string any) => new([.. any.Where(c => !char.IsSurrogate(c))]);
}
