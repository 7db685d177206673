using Microsoft.AspNetCore.Http;

namespace PulseStream.Page.Web;

/// <summary>Who may see the page and answer for it.</summary>
/// <param name="token">What has to be known; null on loopback.</param>
internal sealed class PageAccess(PageToken? token)
{
    private const string TokenName = "token";
    private const string CookieName = "pulsestream-token";
    private const string Localhost = "localhost";

    public Task Check(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        if (!IsForThisMachine(request) || !IsFromThisPage(request))
        {
            return Refuse(context, StatusCodes.Status403Forbidden, "This page answers under its own address only.");
        }

        if (token is null || token.IsMatch(request.Cookies[CookieName]))
        {
            return next(context);
        }

        if (HttpMethods.IsGet(request.Method) && token.IsMatch(request.Query[TokenName]))
        {
            return Welcome(context, token);
        }

        return Refuse(context, StatusCodes.Status401Unauthorized, "Open the address with the token that 'serve' printed when it started.");
    }

    // On loopback another name in the request is a foreign page that had its own name point here.
    private bool IsForThisMachine(HttpRequest request) =>
        token is not null
        || string.Equals(request.Host.Host, Localhost, StringComparison.OrdinalIgnoreCase)
        || (System.Net.IPAddress.TryParse(request.Host.Host, out var address) && System.Net.IPAddress.IsLoopback(address));

    // A browser names the page that an answer comes from; it must be this one.
    private static bool IsFromThisPage(HttpRequest request) =>
        HttpMethods.IsGet(request.Method)
        || !request.Headers.TryGetValue("Origin", out var origin)
        || (Uri.TryCreate(origin, UriKind.Absolute, out var from) && string.Equals(from.Authority, request.Host.Value, StringComparison.OrdinalIgnoreCase));

    // The token leaves the address bar at once, where it could be read over a shoulder or be copied on.
    private static Task Welcome(HttpContext context, PageToken token)
    {
        context.Response.Cookies.Append(CookieName, token.Text, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/" });
        context.Response.Redirect("/");
        return Task.CompletedTask;
    }

    private static Task Refuse(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(sentence);
    }
}
