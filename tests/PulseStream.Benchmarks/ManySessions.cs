using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace PulseStream.Benchmarks;

/// <summary>An archive of many small sessions: one person with three checks a day, the others with one. Copies of a sealed one, each sealed anew.</summary>
internal sealed class ManySessions
{
    public const string Person = "hut-1";
    private const int Daily = 3;

    // Of all sessions, the share of the person with three checks a day.
    private const int OneIn = 10;
    private const int DaysOfOthers = 100;
    private static readonly DateTimeOffset First = new(2025, 1, 1, 7, 0, 0, TimeSpan.FromHours(1));
    private static readonly string NoSeal = new('0', 64);

    private readonly string _text;
    private readonly (string Name, byte[] Bytes)[] _files;

    /// <summary>Takes a session as the pattern.</summary>
    public ManySessions(string session)
    {
        _text = File.ReadAllText(Path.Combine(session, "session.json"));
        _files = [.. Directory.GetFiles(session, "*.parquet").Select(path => (Path.GetFileName(path), File.ReadAllBytes(path)))];
    }

    public void WriteTo(string archive, int sessions)
    {
        var own = sessions / OneIn;
        Parallel.For(0, sessions, i =>
        {
            var (person, start) = i < own
                ? (Person, First.AddDays(i / Daily).AddHours(6 * (i % Daily)))
                : ($"valley-{(i - own) / DaysOfOthers}", First.AddDays((i - own) % DaysOfOthers));
            Write(archive, person, start);
        });
    }

    private void Write(string archive, string person, DateTimeOffset start)
    {
        var name = $"check-{start.UtcDateTime:yyyyMMdd'T'HHmmss'Z'}";
        var folder = Directory.CreateDirectory(Path.Combine(archive, $"person={person}", $"date={start:yyyy-MM-dd}", $"session={name}")).FullName;
        foreach (var (file, bytes) in _files)
        {
            File.WriteAllBytes(Path.Combine(folder, file), bytes);
        }

        var text = Set(Set(Set(Set(_text, "session", name), "person", person), "start", start.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture)), "seal", NoSeal);
        File.WriteAllText(Path.Combine(folder, "session.json"), Set(text, "seal", Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))));
    }

    private static string Set(string text, string member, string value) =>
        new Regex($"(?m)^  \"{member}\": \"[^\"]*\"", RegexOptions.None, TimeSpan.FromSeconds(1)).Replace(text, $"  \"{member}\": \"{value}\"", 1);
}
