using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using PulseStream.Page.Web;
using PulseStream.Samples;

namespace PulseStream.Page;

/// <summary>Serves the page of one bedside session.</summary>
public sealed class BedsideServer : IAsyncDisposable
{
    // Answers of the page have some twenty bytes.
    private const long LongestBody = 1024;

    private readonly WebApplication _app;
    private readonly PastSessions _past;

    private BedsideServer(WebApplication app, PastSessions past, Uri url) => (_app, _past, Url) = (app, past, url);

    /// <summary>Where the page is, without a token.</summary>
    public Uri Url { get; }

    /// <summary>Starts to listen.</summary>
    /// <param name="session">Whose page it is; stays the caller's.</param>
    /// <param name="options">Where past sessions are.</param>
    /// <param name="address">Where to listen.</param>
    /// <param name="token">What has to be known to see the page; null where nothing has.</param>
    /// <param name="place">What the address is called in a complaint: the option.</param>
    /// <exception cref="BadInputException">The address cannot be listened at.</exception>
    public static async Task<BedsideServer> StartAsync(BedsideSession session, BedsideOptions options, PageAddress address, PageToken? token, string place)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton<IHostLifetime, UnhostedLifetime>();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LongestBody;
            kestrel.Listen(address.Address, address.Port);
        });
        var app = builder.Build();
        var past = new PastSessions(options.Archive, options.Person);
        app.Use(Headers);
        app.Use(new PageAccess(token).Check);
        new PageRoutes(session, past).AddTo(app);
        try
        {
            await app.StartAsync();
        }
        catch (Exception e) when (e is IOException or SocketException)
        {
            await app.DisposeAsync();
            past.Dispose();
            throw new BadInputException(place, $"{address.Address} port {address.Port} cannot be listened at ({e.Message.TrimEnd('.')})", "Give an address of this machine and a free port", e);
        }

        var listens = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        return new BedsideServer(app, past, new Uri(listens));
    }

    /// <summary>Stops listening; open streams are cut.</summary>
    public async ValueTask DisposeAsync()
    {
        using var now = new CancellationTokenSource(TimeSpan.FromSeconds(1));
        await _app.StopAsync(now.Token);
        await _app.DisposeAsync();
        _past.Dispose();
    }

    private static Task Headers(HttpContext context, RequestDelegate next)
    {
        var headers = context.Response.Headers;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        return next(context);
    }
}
