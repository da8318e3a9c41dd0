using Microsoft.AspNetCore.Http;

namespace SquadAnalytics.Workbench.Web.Doors;

/// <summary>
/// Decides about every request before anything else sees it: right host, right origin (WebSockets included), right cookie; and puts
/// the page's policies on every answer.
/// </summary>
internal sealed class DoorKeeper(RequestDelegate next, FirstAddress firstAddress)
{
    /// <summary>Checks one request and passes it on, or answers it.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        ContentPolicy.Apply(context.Response, request.Host);
        if (!IsThisMachine(request.Host) || request.Host.Port != context.Connection.LocalPort)
        {
            await Refuse(context, StatusCodes.Status421MisdirectedRequest, "This address is not one of this workbench.");
            return;
        }

        if (!IsOwnOrigin(context))
        {
            await Refuse(context, StatusCodes.Status403Forbidden, "Another page asked for this; only the workbench's own pages may.");
            return;
        }

        // The server's own limit counts only what somebody reads; this one turns the request away unread.
        if (request.ContentLength > WorkbenchServer.UploadLimitBytes)
        {
            await Refuse(context, StatusCodes.Status413PayloadTooLarge, "A request may have 64 MB at most.");
            return;
        }

        if (request.Path.StartsWithSegments(FirstAddress.Path.TrimEnd('/'), StringComparison.Ordinal, out var rest))
        {
            await Enter(context, rest.Value?.TrimStart('/') ?? "");
            return;
        }

        if (!firstAddress.Admits(request.Cookies[FirstAddress.Cookie]))
        {
            await Refuse(context, StatusCodes.Status403Forbidden, "Open the workbench with the address that it printed when it started. Each address opens once; the newest one stands last.");
            return;
        }

        await next(context);
    }

    private static bool IsThisMachine(HostString host) => host.Host is "127.0.0.1" or "localhost" or "[::1]";

    // A page of another site can make the browser send requests here, cookie or not: Origin and Sec-Fetch-Site tell where they come from.
    private static bool IsOwnOrigin(HttpContext context)
    {
        var request = context.Request;
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var isEntering = HttpMethods.IsGet(request.Method) && request.Path.StartsWithSegments(FirstAddress.Path.TrimEnd('/'), StringComparison.Ordinal);
        if (site is not ("" or "same-origin" or "none") && !isEntering) return false;
        var origin = request.Headers.Origin.ToString();
        if (origin.Length > 0) return string.Equals(origin, $"http://{request.Host.Value}", StringComparison.OrdinalIgnoreCase);
        var needsOrigin = context.WebSockets.IsWebSocketRequest || request.Headers.Upgrade.Count > 0 || !(HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method));
        return !needsOrigin;
    }

    private async Task Enter(HttpContext context, string secret)
    {
        if (firstAddress.Exchange(secret) is not { } pass)
        {
            await Refuse(context, StatusCodes.Status403Forbidden, "This address was used before. The workbench has printed a new one.");
            return;
        }

        context.Response.Cookies.Append(FirstAddress.Cookie, pass, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", IsEssential = true });
        // A redirect straight after a navigation from outside would not carry a strict cookie; the page's own link does.
        context.Response.Redirect("/");
    }

    private static Task Refuse(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(sentence);
    }
}
