namespace PulseStream.Plots.Panels;

/// <summary>Where a panel's data lies in the picture, pixels.</summary>
/// <param name="Left">Left end of the panel.</param>
/// <param name="Right">Right end of the panel.</param>
/// <param name="Top">Upper end of the data.</param>
/// <param name="Height">Height of the data.</param>
/// <param name="EndSeconds">End of the time axis.</param>
/// <param name="HasTimes">Whether times are written below it.</param>
internal sealed record PanelArea(float Left, float Right, float Top, float Height, double EndSeconds, bool HasTimes)
{
    /// <summary>Width of the data.</summary>
    public float DataWidth => Right - Left - Panel.LeftPixels - Panel.RightPixels;

    /// <summary>Pixels that a time takes.</summary>
    public double PixelsPerSecond => DataWidth / EndSeconds;
}
