using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using PulseStream.Archive;
using PulseStream.Cli.Commands;
using PulseStream.Readings;
using PulseStream.Readings.Curves;
using PulseStream.Samples;
using PulseStream.Sessions;
using PulseStream.Signal;
using PulseStream.Sources;
using PulseStream.Triage;

namespace PulseStream.Cli.Inputs;

/// <summary>What the results of a replay depend on, in a few letters.</summary>
internal static class ReplayKey
{
    private const int Digits = 16;

    // A build that behaves otherwise has other identities, whatever version number it carries.
    private static readonly Type[] Builds =
        [typeof(SampleBlock), typeof(Recording), typeof(Beat), typeof(Reading), typeof(Advice), typeof(ArchivedSession), typeof(MeasurementSession), typeof(ReplayKey)];

    /// <summary>This build of the program.</summary>
    public static string OfProgram() => HashOf(Builds.Select(type => type.Module.ModuleVersionId.ToString()));

    /// <summary>A replay: curve, policy, and every session that is replayed or that another's advice may look back on.</summary>
    public static string OfOrder(SessionOrder order, IReadOnlyList<string> paths) => HashOf(
    [
        order.Curve is { } curve ? CurveFile.Format(curve) : "",
        order.Policy?.Json ?? "",
        .. paths.Concat(order.Archive is { } archive ? SessionArchive.Sessions(archive) : []).Select(StampOf),
    ]);

    // session.json is written last and holds the hashes of all other files of its session.
    private static string StampOf(string path)
    {
        var file = new FileInfo(Directory.Exists(path) ? Path.Combine(path, "session.json") : path);
        return string.Create(CultureInfo.InvariantCulture, $"{path} {(file.Exists ? file.Length : 0)} {(file.Exists ? file.LastWriteTimeUtc.Ticks : 0)}");
    }

    private static string HashOf(IEnumerable<string> parts) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', parts))))[..Digits];
}
