using System.Globalization;
using PulseStream.Samples;

namespace PulseStream.Accuracy.Optics;

/// <summary>Molar extinction of haemoglobin in water at one wavelength, cm⁻¹/M.</summary>
/// <remarks>Compiled by S. Prahl (Oregon Medical Laser Center) from data of W. B. Gratzer and N. Kollias, in steps of 2 nm.</remarks>
/// <param name="WithOxygen">Of haemoglobin that carries oxygen.</param>
/// <param name="Without">Of haemoglobin that carries none.</param>
public readonly record struct Extinction(double WithOxygen, double Without)
{
    private const string Resource = "extinction-600-1000.csv";

    private static readonly (double Nanometres, Extinction Extinction)[] Table = Read();

    /// <summary>The extinction at a wavelength, linear between the lines of the table.</summary>
    /// <param name="nanometres">600 to 1000 nm.</param>
    /// <exception cref="BadInputException">The wavelength is outside the table.</exception>
    public static Extinction At(double nanometres)
    {
        if (!(nanometres >= Table[0].Nanometres && nanometres <= Table[^1].Nanometres))
        {
            throw new BadInputException(
                "wavelength", $"expected {Table[0].Nanometres} to {Table[^1].Nanometres} nm, where the table of extinctions lies, found {nanometres}", "Give a wavelength in this range");
        }

        var upper = Math.Max(1, Array.FindIndex(Table, line => line.Nanometres >= nanometres));
        var (low, high) = (Table[upper - 1], Table[upper]);
        var share = (nanometres - low.Nanometres) / (high.Nanometres - low.Nanometres);
        return new(
            low.Extinction.WithOxygen + (share * (high.Extinction.WithOxygen - low.Extinction.WithOxygen)),
            low.Extinction.Without + (share * (high.Extinction.Without - low.Extinction.Without)));
    }

    private static (double, Extinction)[] Read()
    {
        using var reader = new StreamReader(typeof(Extinction).Assembly.GetManifestResourceStream(Resource)!);
        return
        [
            .. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)
                .Select(line => line.Split(',').Select(field => double.Parse(field, CultureInfo.InvariantCulture)).ToArray())
                .Select(fields => (fields[0], new Extinction(fields[1], fields[2]))),
        ];
    }
}
