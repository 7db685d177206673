namespace PulseStream.Page.Web;

/// <summary>The answer to whether the right person is here, as the page sends it.</summary>
/// <param name="IsRight">Whether it is.</param>
internal sealed record PersonAnswer(bool IsRight);
