namespace PulseStream.Samples;

/// <summary>
/// Input that cannot be used: a file, a line, an option. The message is one sentence for a person that names the place,
/// what was expected and found, and what to do. Caught once, by the command line or the page; exit status 2.
/// </summary>
public sealed class BadInputException : Exception
{
    /// <summary>Says what is wrong with an input.</summary>
    /// <param name="place">File with line, byte or column, or the option: "night.csv, line 1".</param>
    /// <param name="problem">What was expected and what was found, without a full stop.</param>
    /// <param name="remedy">What the person can do, as one sentence part without a full stop.</param>
    /// <param name="innerException">What a library threw, where one did.</param>
    public BadInputException(string place, string problem, string remedy, Exception? innerException = null)
        : base($"{place}: {problem}. {remedy}.", innerException)
    {
        Place = place;
    }

    /// <summary>File with line, byte or column, or the option.</summary>
    public string Place { get; }
}
