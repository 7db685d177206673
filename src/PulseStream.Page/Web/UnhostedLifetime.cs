using Microsoft.Extensions.Hosting;

namespace PulseStream.Page.Web;

/// <summary>Leaves Ctrl-C to the command line, which has a session to seal first.</summary>
internal sealed class UnhostedLifetime : IHostLifetime
{
    public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
