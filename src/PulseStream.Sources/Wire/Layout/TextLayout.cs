namespace PulseStream.Sources.Wire.Layout;

/// <summary>Lines of text.</summary>
/// <param name="Separator">Bytes between fields; empty for any run of blanks and tabs.</param>
/// <param name="StartsWith">Opens the lines that count; empty where all do.</param>
/// <param name="HasChecksum">Whether lines end in * and two hexadecimal digits.</param>
/// <param name="Fields">In order.</param>
internal sealed record TextLayout(byte[] Separator, byte[] StartsWith, bool HasChecksum, TextField[] Fields);
