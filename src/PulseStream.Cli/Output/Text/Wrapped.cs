namespace PulseStream.Cli.Output.Text;

/// <summary>Breaks text between words, so that lines with their margin stay within 80 columns.</summary>
internal static class Wrapped
{
    private const int Columns = 78;
    private const string Dash = "- ";
    private const string Hanging = "  ";

    /// <summary>Lines of a text.</summary>
    /// <param name="text">Words with single blanks between them.</param>
    /// <param name="hanging">Whether a dash stands before the first line and blanks before the others.</param>
    public static IEnumerable<string> Lines(string text, bool hanging = false) => Lines(text, Columns, hanging);

    /// <summary>Lines of a text.</summary>
    /// <param name="text">Words with single blanks between them.</param>
    /// <param name="columns">Longest line, unless one word is longer.</param>
    /// <param name="hanging">Whether a dash stands before the first line and blanks before the others.</param>
    public static IEnumerable<string> Lines(string text, int columns, bool hanging = false)
    {
        var line = hanging ? Dash : "";
        var isStart = true;
        foreach (var word in text.Split(' '))
        {
            if (!isStart && line.Length + 1 + word.Length > columns)
            {
                yield return line;
                (line, isStart) = (hanging ? Hanging : "", true);
            }

            line += isStart ? word : $" {word}";
            isStart = false;
        }

        yield return line;
    }
}
