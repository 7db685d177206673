namespace PulseStream.Archive.Sealing;

/// <summary>A file of a session as its session.json knows it.</summary>
/// <param name="Rows">Rows of the Parquet file.</param>
/// <param name="Bytes">Size.</param>
/// <param name="Sha256">SHA-256 of all its bytes, hexadecimal.</param>
internal sealed record StoredFile(long Rows, long Bytes, string Sha256);
