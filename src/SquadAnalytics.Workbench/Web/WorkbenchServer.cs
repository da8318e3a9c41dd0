using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.FluentUI.AspNetCore.Components;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Workbench.Web.Doors;
using SquadAnalytics.Workbench.Web.Shell;
using SquadAnalytics.Workbench.Web.State;

namespace SquadAnalytics.Workbench.Web;

/// <summary>The local web workbench: one page, served on this machine only.</summary>
internal static class WorkbenchServer
{
    /// <summary>The largest request that is read.</summary>
    internal const long UploadLimitBytes = 64L << 20;

    /// <summary>Serves until it is stopped; the ready line with the address goes to <paramref name="output"/>.</summary>
    public static async Task<int> RunAsync(WorkbenchOptions options, TextWriter output, CancellationToken cancellation)
    {
        var firstAddress = new FirstAddress();
        var port = FreePort();
        await using var app = Build(options, firstAddress, port);
        var address = $"http://127.0.0.1:{port}";
        firstAddress.Renewed += secret => output.WriteLine($"Another window: {address}{FirstAddress.Path}{secret}");
        await app.StartAsync(cancellation);
        var first = $"{address}{FirstAddress.Path}{firstAddress.Secret}";
        await output.WriteLineAsync($"The workbench is open at {first}");
        await output.WriteLineAsync("Ctrl+C ends it.");
        await output.FlushAsync(cancellation);
        if (options.OpenBrowser) BrowserWindow.TryOpen(first);
        await app.WaitForShutdownAsync(cancellation);
        return 0;
    }

    private static WebApplication Build(WorkbenchOptions options, FirstAddress firstAddress, int port)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, ApplicationName = typeof(WorkbenchServer).Assembly.GetName().Name });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = UploadLimitBytes;
            kestrel.Listen(IPAddress.Loopback, port);
            if (Socket.OSSupportsIPv6) kestrel.Listen(IPAddress.IPv6Loopback, port);
        });
        builder.Logging.ClearProviders().SetMinimumLevel(LogLevel.Warning).AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Services.AddSingleton(options).AddSingleton(firstAddress).AddSingleton(TimeProvider.System).AddSingleton<OpenLogbook>().AddSingleton<KeptRuns>().AddSingleton<QuestionDesk>();
        builder.Services.AddSingleton(new KernelSource(KernelCommand.ForThisProgram(), KernelLimits.Default with { IdleTime = options.IdleTime }));
        builder.Services.AddSingleton(new TrustedNotebooks(TrustedNotebooks.UsualFile())).AddSingleton<NotebookDesk>();
        // Keys live as long as the process: nothing is written to the home folder.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        builder.Services.AddRazorComponents().AddInteractiveServerComponents().AddHubOptions(hub => hub.MaximumReceiveMessageSize = 1 << 20);
        builder.Services.AddFluentUIComponents();
        var app = builder.Build();
        app.UseMiddleware<DoorKeeper>();
        app.UseStatusCodePagesWithReExecute("/no-such-page", createScopeForStatusCodePages: true);
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapGet("/kept/{name}/report.html", (string name, KeptRuns kept) => kept.ReportOf(name) is { } path ? Results.File(path, "text/html; charset=utf-8") : Results.NotFound());
        app.MapGet("/kept/{name}/export/{kind}", (string name, string kind, KeptRuns kept) =>
            Enum.TryParse<ExportKind>(kind, ignoreCase: true, out var known) && kept.Export(name, known) is { } file
                ? Results.File(file.Content.ToArray(), "application/octet-stream", file.Name)
                : Results.Text("This run has nothing of the kind to export, or the logbook cannot note the export.", statusCode: StatusCodes.Status404NotFound));
        app.MapGet("/sheet/{kind}", (string kind, string protocol, DateOnly date, string? group, bool stations, bool codes, OpenLogbook opened) =>
            SheetFile.Make(opened.Squad, protocol, date, group, stations, codes) is { } sheet && SheetFile.Of(sheet, kind) is { } file
                ? Results.File(file.Content, file.Type, kind == "html" ? null : file.Name)
                : Results.NotFound());
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(render => render.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    // One port for both loopback addresses: the server itself can only be asked for "any port" on one of them.
    private static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
