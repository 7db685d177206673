using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Beats of two kinds are alike where they come in turn, as in bigeminy, and only there.</summary>
public sealed class BeatShapeTests
{
    private const int BinsPerSecond = 50;
    private const int Beats = 8;

    [Fact]
    public void BeatsInPairsAreComparedWithTheirOwnKind() => Assert.True(AgreementOf(k => k % 2 == 0) > 0.95);

    [Fact]
    public void BeatsOfTwoKindsInNoOrderAreNotAlike() => Assert.True(AgreementOf(k => k is 0 or 1 or 4 or 7) < 0.6);

    // A short beat falls steeply behind a wide crest, a long one at once and slowly.
    private static double AgreementOf(Func<int, bool> isShort)
    {
        var volumes = new double[(Beats + 2) * BinsPerSecond];
        var rises = new double[Beats];
        var at = BinsPerSecond / 2;
        for (var k = 0; k < Beats; k++)
        {
            rises[k] = at;
            var length = isShort(k) ? 34 : 66;
            for (var n = 0; n < length; n++)
            {
                volumes[at + n] = isShort(k) ? Math.Sin(Math.PI * n / length) : Math.Exp(-6.0 * n / length);
            }

            at += length;
        }

        var shape = new BeatShape();
        shape.Judge(volumes, rises, BinsPerSecond);
        return shape.Agreement;
    }
}
