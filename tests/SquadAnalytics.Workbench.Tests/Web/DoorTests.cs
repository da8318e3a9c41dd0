using System.Net;
using System.Net.Sockets;
using System.Net.WebSockets;
using System.Text;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Attacks on the doors of the local server.</summary>
public sealed class DoorTests(ServedWorkbench workbench) : IClassFixture<ServedWorkbench>
{
    [Fact]
    public async Task Without_the_cookie_nothing_is_served_not_even_a_style_sheet()
    {
        using var client = new HttpClient { BaseAddress = workbench.Address };
        foreach (var path in new[] { "/", "/logbook", "/workbench.css", "/_framework/blazor.web.js", "/_blazor/negotiate", "/../../etc/passwd" })
            Assert.Equal(HttpStatusCode.Forbidden, (await client.GetAsync(path)).StatusCode);
    }

    [Fact]
    public async Task A_first_address_opens_once_and_the_second_use_is_told_so()
    {
        var first = await workbench.NextFirstAddress();
        using var client = Client();
        var opened = await client.GetAsync(first);
        Assert.Equal(HttpStatusCode.Redirect, opened.StatusCode);
        var cookie = opened.Headers.GetValues("Set-Cookie").Single();
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        var again = await client.GetAsync(first);
        Assert.Equal(HttpStatusCode.Forbidden, again.StatusCode);
        Assert.Contains("was used before", await again.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_guessed_secret_opens_nothing()
    {
        using var client = Client();
        Assert.Equal(HttpStatusCode.Forbidden, (await client.GetAsync(new Uri(workbench.Address, "/enter/" + new string('0', 48)))).StatusCode);
    }

    [Theory]
    [InlineData("attacker.example")]
    [InlineData("127.0.0.1.attacker.example")]
    [InlineData("127.0.0.1:1")]
    public async Task A_name_that_was_pointed_at_this_machine_is_turned_away(string host)
    {
        using var client = await Admitted();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { Host = host } };
        Assert.Equal(HttpStatusCode.MisdirectedRequest, (await client.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("Origin", "https://attacker.example")]
    [InlineData("Origin", "null")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task A_request_from_another_page_is_turned_away_even_with_the_cookie(string header, string text)
    {
        using var client = await Admitted();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { { header, text } } };
        Assert.Equal(HttpStatusCode.Forbidden, (await client.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task A_post_without_an_origin_is_turned_away()
    {
        using var client = await Admitted();
        Assert.Equal(HttpStatusCode.Forbidden, (await client.PostAsync("/_blazor/negotiate", new ByteArrayContent([]))).StatusCode);
    }

    [Theory]
    [InlineData("https://attacker.example")]
    [InlineData(null)]
    public async Task A_socket_from_another_page_is_turned_away_even_with_the_cookie(string? origin)
    {
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Cookie", await Cookie());
        if (origin is not null) socket.Options.SetRequestHeader("Origin", origin);
        var uri = new UriBuilder(workbench.Address) { Scheme = "ws", Path = "/_blazor" }.Uri;
        var error = await Assert.ThrowsAsync<WebSocketException>(() => socket.ConnectAsync(uri, CancellationToken.None));
        Assert.Contains("403", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_own_page_and_its_socket_are_let_in()
    {
        using var client = await Admitted();
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/")).StatusCode);
        using var socket = new ClientWebSocket();
        socket.Options.SetRequestHeader("Cookie", await Cookie());
        socket.Options.SetRequestHeader("Origin", workbench.Address.GetLeftPart(UriPartial.Authority));
        await socket.ConnectAsync(new UriBuilder(workbench.Address) { Scheme = "ws", Path = "/_blazor" }.Uri, CancellationToken.None);
        Assert.Equal(WebSocketState.Open, socket.State);
    }

    [Theory]
    [InlineData("/", "../")]
    [InlineData("/", "%2e%2e/")]
    [InlineData("/_content/", "..%2f")]
    public async Task A_path_cannot_climb_out(string start, string up)
    {
        // More steps up than any folder is deep: above the root there is only the root.
        var path = start + string.Concat(Enumerable.Repeat(up, 40)) + "etc/passwd";

        // Written by hand, because the client library would tidy the path up before sending it.
        using var tcp = new TcpClient();
        await tcp.ConnectAsync(IPAddress.Loopback, workbench.Address.Port);
        await using var stream = tcp.GetStream();
        var request = $"GET {path} HTTP/1.1\r\nHost: {workbench.Address.Authority}\r\nCookie: {await Cookie()}\r\nConnection: close\r\n\r\n";
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request));
        using var reader = new StreamReader(stream);
        var answer = await reader.ReadToEndAsync();
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_answer_forbids_inline_and_evaluated_script()
    {
        using var client = await Admitted();
        var policy = (await client.GetAsync("/")).Headers.GetValues("Content-Security-Policy").Single();
        var script = policy.Split(';', StringSplitOptions.TrimEntries).Single(rule => rule.StartsWith("script-src", StringComparison.Ordinal));
        Assert.Equal("script-src 'self'", script);
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_this_machine_can_connect()
    {
        var others = (await Dns.GetHostAddressesAsync(Dns.GetHostName())).Where(address => !IPAddress.IsLoopback(address));
        foreach (var address in others)
        {
            using var tcp = new TcpClient(address.AddressFamily);
            await Assert.ThrowsAnyAsync<SocketException>(() => tcp.ConnectAsync(address, workbench.Address.Port));
        }
    }

    private static HttpClient Client() => new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });

    private async Task<HttpClient> Admitted()
    {
        var client = Client();
        client.BaseAddress = workbench.Address;
        client.DefaultRequestHeaders.Add("Cookie", await Cookie());
        return client;
    }

    private string? _cookie;

    private async Task<string> Cookie()
    {
        if (_cookie is not null) return _cookie;
        using var client = Client();
        var answer = await client.GetAsync(await workbench.NextFirstAddress());
        return _cookie = answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
    }
}
