namespace PulseStream.Accuracy.Statistics;

/// <summary>The logarithm of the gamma function.</summary>
/// <remarks>C. Lanczos, J. SIAM Numer. Anal. B 1 (1964) 86, with g = 7 and nine terms.</remarks>
internal static class GammaFunction
{
    private const double G = 7;

    private static readonly double[] Terms =
    [
        0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
        12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
    ];

    public static double LogAt(double z)
    {
        if (z < 0.5)
        {
            return Math.Log(Math.PI / Math.Sin(Math.PI * z)) - LogAt(1 - z);
        }

        var sum = Terms[0];
        for (var i = 1; i < Terms.Length; i++)
        {
            sum += Terms[i] / (z - 1 + i);
        }

        var t = z - 1 + G + 0.5;
        return (Math.Log(2 * Math.PI) / 2) + ((z - 0.5) * Math.Log(t)) - t + Math.Log(sum);
    }
}
