using System.Text.RegularExpressions;
using PulseStream.Samples;

namespace PulseStream.Archive;

/// <summary>
/// What may stand for a person, a session, a sensor or a site: 1 to 64 letters (a to z), digits, hyphens and
/// underscores. No room for a name with a blank in it, and every such word is a safe folder name.
/// </summary>
public static partial class Pseudonym
{
    /// <summary>Letters of the longest one.</summary>
    internal const int Longest = 64;

    /// <summary>Gives a pseudonym back, or refuses it.</summary>
    /// <param name="place">What it stands for, as the person named it: "--person".</param>
    /// <param name="pseudonym">What was given.</param>
    /// <exception cref="BadInputException">It is no pseudonym.</exception>
    public static string Checked(string place, string pseudonym) => Allowed().IsMatch(pseudonym)
        ? pseudonym
        : throw new BadInputException(place, $"expected a pseudonym of 1 to 64 letters, digits, '-' and '_', found '{pseudonym}'", "Choose one that names nobody");

    [GeneratedRegex(@"\A[A-Za-z0-9_-]{1,64}\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Allowed();
}
