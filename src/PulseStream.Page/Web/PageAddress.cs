using System.Net;

namespace PulseStream.Page.Web;

/// <summary>Where the page listens.</summary>
/// <param name="Address">The interface's address; loopback unless told otherwise.</param>
/// <param name="Port">The port; 0 takes a free one.</param>
public sealed record PageAddress(IPAddress Address, int Port)
{
    /// <summary>Whether only this machine can reach it, so that no token is needed.</summary>
    public bool IsLoopback => IPAddress.IsLoopback(Address);
}
