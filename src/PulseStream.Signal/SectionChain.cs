namespace PulseStream.Signal;

/// <summary>Runs second-order sections one sample at a time, transposed direct form II, in double precision.</summary>
/// <remarks>The order of operations is that of SciPy's <c>sosfilt</c>, so that its output can be compared to the last bit.</remarks>
public sealed class SectionChain
{
    private readonly SecondOrderSection[] sections;
    private readonly double[] first;
    private readonly double[] second;

    /// <summary>A chain at rest.</summary>
    /// <param name="sections">Applied in this order.</param>
    public SectionChain(ReadOnlySpan<SecondOrderSection> sections)
    {
        this.sections = sections.ToArray();
        first = new double[sections.Length];
        second = new double[sections.Length];
    }

    /// <summary>The next output for the next input, same unit.</summary>
    /// <param name="x">Input.</param>
    public double Step(double x)
    {
        for (var i = 0; i < sections.Length; i++)
        {
            ref readonly var section = ref sections[i];
            var y = (section.B0 * x) + first[i];
            first[i] = (section.B1 * x) - (section.A1 * y) + second[i];
            second[i] = (section.B2 * x) - (section.A2 * y);
            x = y;
        }

        return x;
    }

    /// <summary>Forgets everything and takes the state that a constant input has led to for ever.</summary>
    /// <param name="x">The constant input.</param>
    public void SettleAt(double x)
    {
        for (var i = 0; i < sections.Length; i++)
        {
            ref readonly var section = ref sections[i];
            var gain = (section.B0 + section.B1 + section.B2) / (1 + section.A1 + section.A2);
            var y = gain * x;
            second[i] = (section.B2 * x) - (section.A2 * y);
            first[i] = (section.B1 * x) - (section.A1 * y) + second[i];
            x = y;
        }
    }
}
