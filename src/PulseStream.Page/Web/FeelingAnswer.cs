namespace PulseStream.Page.Web;

/// <summary>The answer to how the person feels, as the page sends it.</summary>
/// <param name="Feeling">Name of the feeling.</param>
internal sealed record FeelingAnswer(string? Feeling);
