namespace PulseStream.Plots.Bench;

/// <summary>Colours of heat maps: from blue over white at half the limit to orange at twice the limit, on all of which ink stays readable, also for people with a colour vision deficiency.</summary>
public static class HeatColour
{
    /// <summary>What is deepest, over the limit.</summary>
    public const double DeepestShare = 2;

    private const double WhiteShare = 0.5;

    /// <summary>Red, green and blue, 0 to 255.</summary>
    /// <param name="share">Value over the limit; null for no value: grey.</param>
    public static (byte Red, byte Green, byte Blue) At(double? share)
    {
        if (share is not { } known)
        {
            return (227, 227, 227);
        }

        var depth = Math.Clamp(known, 0, DeepestShare);
        return depth < WhiteShare
            ? Mix((140, 200, 236), 1 - (depth / WhiteShare))
            : Mix((240, 150, 60), (depth - WhiteShare) / (DeepestShare - WhiteShare));
    }

    private static (byte Red, byte Green, byte Blue) Mix((int Red, int Green, int Blue) colour, double share) =>
        (Mix(colour.Red, share), Mix(colour.Green, share), Mix(colour.Blue, share));

    private static byte Mix(int colour, double share) => (byte)Math.Round(255 + ((colour - 255) * share));
}
