using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using PulseStream.Page.Live;

namespace PulseStream.Page.Web;

/// <summary>What the page's addresses give.</summary>
internal sealed class PageRoutes(BedsideSession session, PastSessions past)
{
    public void AddTo(WebApplication app)
    {
        app.MapGet("/", Document);
        app.MapGet("/events", Events);
        app.MapGet("/sessions", () => TypedResults.Ok(past.List()));
        app.MapGet("/picture", Picture);
        app.MapPost("/feeling", Feeling);
        app.MapPost("/person", Person);
    }

    private static ContentHttpResult Document(HttpContext context)
    {
        context.Response.Headers.ContentSecurityPolicy = PageDocument.SecurityPolicy;
        context.Response.Headers.CacheControl = "no-store";
        return TypedResults.Content(PageDocument.Html, "text/html; charset=utf-8");
    }

    private ServerSentEventsResult<string> Events(HttpContext context)
    {
        var viewer = session.Broadcast.Join(session.Hello);
        context.Response.OnCompleted(() =>
        {
            session.Broadcast.Leave(viewer);
            return Task.CompletedTask;
        });

        // A send that hangs on a slow viewer ends only with the connection.
        viewer.Dropped.Register(context.Abort);
        return TypedResults.ServerSentEvents(Items(viewer, context.RequestAborted));
    }

    private static async IAsyncEnumerable<SseItem<string>> Items(Viewer viewer, [EnumeratorCancellation] CancellationToken cancel)
    {
        await foreach (var told in viewer.Events(cancel))
        {
            yield return new SseItem<string>(told.Json, told.Name);
        }
    }

    private async Task<Results<FileContentHttpResult, NotFound>> Picture(string key, CancellationToken cancel) =>
        await past.PictureOf(key, cancel) is { } png ? TypedResults.File(png, "image/png") : TypedResults.NotFound();

    private Results<NoContent, BadRequest<string>> Feeling(FeelingAnswer answer)
    {
        if (PageNames.FeelingOf(answer.Feeling) is not { } feeling)
        {
            return TypedResults.BadRequest("Expected one of not-asked, well, poorly, breathless, severe.");
        }

        session.Answer(feeling);
        return TypedResults.NoContent();
    }

    private NoContent Person(PersonAnswer answer)
    {
        session.PersonIs(answer.IsRight);
        return TypedResults.NoContent();
    }
}
