namespace PulseStream.Plots;

/// <summary>Size of a picture, pixels.</summary>
/// <param name="Width">900 to 8000: the small print stays whole.</param>
/// <param name="Height">800 to 8000: eleven reasons find room below three panels.</param>
/// <exception cref="ArgumentOutOfRangeException">A side is outside its limits.</exception>
public sealed record PictureSize(int Width, int Height)
{
    private const int Narrowest = 900;
    private const int Lowest = 800;

    // Above it a picture takes more than a quarter of a gigabyte while it is drawn.
    private const int Largest = 8000;

    /// <summary>1200 × 1000: readable on a screen and across a page.</summary>
    public static PictureSize Default { get; } = new(1200, 1000);

    /// <summary>Pixels from left to right.</summary>
    public int Width { get; } = Width is >= Narrowest and <= Largest
        ? Width
        : throw new ArgumentOutOfRangeException(nameof(Width), Width, $"A picture is {Narrowest} to {Largest} pixels wide.");

    /// <summary>Pixels from top to bottom.</summary>
    public int Height { get; } = Height is >= Lowest and <= Largest
        ? Height
        : throw new ArgumentOutOfRangeException(nameof(Height), Height, $"A picture is {Lowest} to {Largest} pixels high.");
}
