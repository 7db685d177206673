using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Reads SpO2 off the curve, with the interval that holds it 95 times in 100.</summary>
internal sealed class SaturationInterval(CalibrationCurve curve, JudgeOptions options)
{
    /// <summary>SpO2 of a believed second with its interval.</summary>
    /// <param name="second">The second.</param>
    /// <param name="leakedRatio">How far blood's own R may lie from the one read, with its sign, for light that leaks past, in units of R.</param>
    public Saturation Of(in SignalSecond second, double leakedRatio)
    {
        var fit = second.Fit;
        var percent = curve.PercentAt(fit.Ratio);
        var slope = Math.Abs(curve.SlopeAt(fit.Ratio));
        var chance = RatioChance.Of(second, options);

        // Light that was added to the emitters' divides each channel's pulse by its own share: an error of one sign, not of chance.
        var half = Math.Sqrt(Square(slope * chance) + Square(options.IntervalFloorPercent)) + (slope * ((options.RoomLightAmplitudes * RoomLightRatio(second)) + (options.OtherLightAmplitudes * fit.Ratio * fit.OtherLightSize)));
        var leaked = curve.PercentAt(fit.Ratio + leakedRatio) - percent;
        var (low, high) = (percent - half + Math.Min(leaked, 0), percent + half + Math.Max(leaked, 0));
        return new(Clamp(Math.Clamp(curve.PercentAt(fit.Ratio + LeastLampRatio(fit)), low, high)), Clamp(low), Clamp(high));
    }

    // Light is never negative: a lamp adds its amplitude to its own mean at least, and divides each channel's pulse by what it adds there.
    private static double LeastLampRatio(in RatioFit fit) =>
        double.IsNaN(fit.LightMix) ? 0 : fit.Ratio * fit.RoomLightSize * (fit.LightMix - 1);

    private static double RoomLightRatio(in SignalSecond second)
    {
        var red = second.Fit.RoomLightSize * second.Light.InfraredCounts / second.Light.RedCounts;
        return Math.Abs(second.Fit.Ratio * (red - second.Fit.RoomLightSize));
    }

    private static double Square(double x) => x * x;

    private static double Clamp(double percent) => Math.Clamp(percent, 0, 100);
}
