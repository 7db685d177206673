using PulseStream.Readings;
using ScottPlot;

namespace PulseStream.Plots;

/// <summary>Colours that people with a colour vision deficiency tell apart. Source: M. Okabe, K. Ito, Color Universal Design, 2008.</summary>
internal static class Palette
{
    public static readonly Color Ink = Color.FromHex("#1A1A1A");
    public static readonly Color Soft = Color.FromHex("#5A5A5A");
    public static readonly Color Grid = Color.FromHex("#E3E3E3");
    public static readonly Color Frame = Color.FromHex("#9A9A9A");
    public static readonly Color Refused = Color.FromHex("#F0F0F0");

    public static readonly Color Blue = Color.FromHex("#0072B2");
    public static readonly Color SkyBlue = Color.FromHex("#56B4E9");
    public static readonly Color Green = Color.FromHex("#009E73");
    public static readonly Color Orange = Color.FromHex("#E69F00");
    public static readonly Color Vermilion = Color.FromHex("#D55E00");
    public static readonly Color Purple = Color.FromHex("#CC79A7");

    /// <summary>The colour of a reason's row; the row's name says it too, so that colours may return.</summary>
    /// <param name="reason">One reason.</param>
    public static Color Of(Reasons reason) => reason switch
    {
        Reasons.NoFinger => Ink,
        Reasons.Saturated or Reasons.AmbientLight => Orange,
        Reasons.Motion or Reasons.Misplaced => Vermilion,
        Reasons.LowPerfusion or Reasons.NoPulse => Blue,
        Reasons.Irregular or Reasons.OutOfRange => Purple,
        _ => Frame,
    };
}
