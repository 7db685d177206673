namespace PulseStream.Page.Live;

/// <summary>Something that every viewer is told.</summary>
/// <param name="Name">One of <see cref="PageNames"/>.</param>
/// <param name="Json">What is told, as one JSON object in one line.</param>
internal sealed record PageEvent(string Name, string Json);
