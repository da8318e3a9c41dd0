using Microsoft.AspNetCore.Http;

namespace SquadAnalytics.Workbench.Web.Doors;

/// <summary>What the browser may load and run: nothing but this server's own files. No inline and no evaluated script.</summary>
/// <remarks>
/// <c>style-src 'unsafe-inline'</c> is there for the code editor, which writes style attributes; styles cannot run code.
/// Workers may come from this server and from blobs: the editor starts its tokeniser that way.
/// </remarks>
internal static class ContentPolicy
{
    /// <summary>Puts the policies on an answer.</summary>
    public static void Apply(HttpResponse response, HostString host)
    {
        var headers = response.Headers;
        headers.ContentSecurityPolicy = Page(host);
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), payment=(), usb=()";
    }

    private static string Page(HostString host) => string.Join(
        "; ",
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self' 'unsafe-inline'",
        "img-src 'self' data:",
        "font-src 'self' data:",
        $"connect-src 'self' ws://{host.Value}",
        "worker-src 'self' blob:",
        "frame-src 'self'",
        "base-uri 'self'",
        "form-action 'self'",
        "frame-ancestors 'self'");
}
