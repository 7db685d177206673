using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace PulseStream.Tests.Days;

/// <summary>Average run length of a CUSUM of normal scores as that of a Markov chain: Brook and Evans, Biometrika 1972;59:539-549.</summary>
internal static class RunLengths
{
    // The error falls with the square of the number of states: at 300 it is below the table's last digit.
    private const int States = 300;

    /// <summary>Both directions together: van Dobben de Bruyn, Cumulative Sum Tests, 1968.</summary>
    public static double TwoSided(double allowance, double limit, double shift) =>
        1 / ((1 / OneSided(allowance, limit, shift)) + (1 / OneSided(allowance, limit, -shift)));

    private static double OneSided(double allowance, double limit, double shift)
    {
        // State i stands for sums within half a width of i widths; the first for zero and what rounds to it.
        var width = 2 * limit / ((2 * States) - 1);
        double Below(double sum) => Normal.CDF(shift - allowance, 1, sum);
        var stays = Matrix<double>.Build.Dense(States, States, (from, to) => to == 0
            ? Below((width / 2) - (from * width))
            : Below(((to + 0.5) * width) - (from * width)) - Below(((to - 0.5) * width) - (from * width)));
        return (Matrix<double>.Build.DenseIdentity(States) - stays).Solve(Vector<double>.Build.Dense(States, 1))[0];
    }
}
