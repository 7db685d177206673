using PulseStream.Archive;
using PulseStream.Samples;

namespace PulseStream.Benchmarks;

/// <summary>Ten minutes at 100 Hz with everything that a reader finds in them, ready to be archived.</summary>
internal sealed class TenMinutes
{
    public const int SampleCount = Hz * Seconds;
    private const int Hz = 100;
    private const int Seconds = 600;

    private static readonly SessionSettings Settings =
        new("textbook-line", """{"name":"textbook-line","coefficients":[110,-25]}""", "none", """{"name":"none"}""", "0.1.0");

    private readonly IReadOnlyList<SampleBlock> blocks;
    private readonly FoundResults results;

    public TenMinutes()
    {
        Samples = TwoLightSignal.At(Hz, Seconds);
        blocks = TwoLightSignal.BlocksOf(Samples, Hz);
        results = FoundResults.In(blocks, TwoLightSignal.HeaderAt(Hz));
    }

    public Sample[] Samples { get; }

    /// <summary>Appends and seals; the session's folder.</summary>
    public string WriteTo(string archiveFolder)
    {
        using var writer = SessionWriter.Create(archiveFolder, new("ten-minutes", "hut-07"), TwoLightSignal.HeaderAt(Hz), Settings, JournalPace.Replay);
        foreach (var block in blocks)
        {
            writer.Append(block);
        }

        results.AppendTo(writer);
        writer.Seal(new(SampleCount, 0, 0, 0));
        return writer.Folder;
    }
}
