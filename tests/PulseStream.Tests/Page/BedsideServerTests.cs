using System.Net;
using System.Net.Http.Json;
using PulseStream.Page;
using PulseStream.Page.Web;
using PulseStream.Samples;
using PulseStream.Simulation;
using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Page;

public sealed class BedsideServerTests : IAsyncLifetime
{
    private static readonly PageAddress Free = new(IPAddress.Loopback, 0);
    private static readonly BedsideOptions Options = new("hut-07", Archive: null, Speed: 1);

    private readonly CountedRecording _recording = new(new Scenario { DurationSeconds = 1 });
    private readonly BedsideSession _session;
    private readonly HttpClient _client = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false });

    public BedsideServerTests() => _session = new(
        _recording,
        Feeling.NotAsked,
        Options,
        TimeProvider.System);

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    [Theory]
    [InlineData("")]
    [InlineData("events")]
    [InlineData("sessions")]
    [InlineData("picture?key=x")]
    [InlineData("?token=0123456789abcdef0123456789abcdef")]
    public async Task WithoutTheTokenNothingIsShown(string path)
    {
        await using var server = await BedsideServer.StartAsync(_session, Options, Free, PageToken.Create(), "--port");
        Assert.Equal(HttpStatusCode.Unauthorized, (await _client.GetAsync(new Uri(server.Url, path), Cancel)).StatusCode);
    }

    [Fact]
    public async Task TheTokenOpensThePageAndLeavesTheAddress()
    {
        var token = PageToken.Create();
        await using var server = await BedsideServer.StartAsync(_session, Options, Free, token, "--port");

        var first = await _client.GetAsync(new Uri(server.Url, "?token=" + token.Text), Cancel);
        Assert.Equal((HttpStatusCode.Redirect, "/"), (first.StatusCode, first.Headers.Location!.ToString()));
        var cookie = Assert.Single(first.Headers.GetValues("Set-Cookie"));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);

        using var second = new HttpRequestMessage(HttpMethod.Get, server.Url) { Headers = { { "Cookie", cookie.Split(';')[0] } } };
        Assert.Equal(HttpStatusCode.OK, (await _client.SendAsync(second, Cancel)).StatusCode);
    }

    [Fact]
    public async Task TheDocumentLetsNothingElseIn()
    {
        await using var server = await BedsideServer.StartAsync(_session, Options, Free, token: null, "--port");

        var answer = await _client.GetAsync(server.Url, Cancel);
        var html = await answer.Content.ReadAsStringAsync(Cancel);

        Assert.Contains("default-src 'none'", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.DoesNotContain("src=\"", html, StringComparison.Ordinal);
        Assert.DoesNotContain("/* script */", html, StringComparison.Ordinal);
        Assert.Contains("PulseStream is no medical device", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AForeignNameOrPageIsRefused()
    {
        await using var server = await BedsideServer.StartAsync(_session, Options, Free, token: null, "--port");

        using var foreignName = new HttpRequestMessage(HttpMethod.Get, server.Url) { Headers = { Host = "clinic.example" } };
        Assert.Equal(HttpStatusCode.Forbidden, (await _client.SendAsync(foreignName, Cancel)).StatusCode);

        using var foreignPage = new HttpRequestMessage(HttpMethod.Post, new Uri(server.Url, "person"))
        {
            Headers = { { "Origin", "http://clinic.example" } },
            Content = JsonContent.Create(new { isRight = true }),
        };
        Assert.Equal(HttpStatusCode.Forbidden, (await _client.SendAsync(foreignPage, Cancel)).StatusCode);
    }

    [Theory]
    [InlineData("well", HttpStatusCode.NoContent)]
    [InlineData("splendid", HttpStatusCode.BadRequest)]
    [InlineData(null, HttpStatusCode.BadRequest)]
    public async Task OnlyKnownFeelingsAreTaken(string? feeling, HttpStatusCode status)
    {
        await using var server = await BedsideServer.StartAsync(_session, Options, Free, token: null, "--port");
        Assert.Equal(status, (await _client.PostAsJsonAsync(new Uri(server.Url, "feeling"), new { feeling }, Cancel)).StatusCode);
    }

    [Fact]
    public async Task APortInUseIsSaid()
    {
        await using var server = await BedsideServer.StartAsync(_session, Options, Free, token: null, "--port");
        var taken = new PageAddress(IPAddress.Loopback, server.Url.Port);

        var refusal = await Assert.ThrowsAsync<BadInputException>(() => BedsideServer.StartAsync(_session, Options, taken, token: null, "--port"));
        Assert.StartsWith("--port: ", refusal.Message, StringComparison.Ordinal);
    }

    public ValueTask DisposeAsync()
    {
        _client.Dispose();
        _session.Dispose();
        _recording.Dispose();
        return ValueTask.CompletedTask;
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;
}
