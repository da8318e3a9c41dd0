using System.Diagnostics;
using Microsoft.Playwright;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>
/// The browser of the tests: an installed Chromium, Chrome or Edge; else Debian's package where the tests run as root; else the one that
/// Playwright installs. Where none can be had the tests fail with the command to run.
/// </summary>
public sealed class TestBrowser : IAsyncLifetime
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge", "chrome.exe", "msedge.exe"];

    private static readonly string[] UsualFolders =
    [
        "/usr/bin", "/snap/bin", "/usr/local/bin",
        "/Applications/Google Chrome.app/Contents/MacOS", "/Applications/Chromium.app/Contents/MacOS",
        @"C:\Program Files\Google\Chrome\Application", @"C:\Program Files (x86)\Microsoft\Edge\Application",
    ];

    // Without these, a browser as root does not start, and a fresh profile calls home.
    private static readonly string[] Switches =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private IPlaywright? _playwright;

    /// <summary>The running browser.</summary>
    public IBrowser Browser { get; private set; } = null!;

    /// <inheritdoc />
    public async Task InitializeAsync()
    {
        // Other test programs run at the same time on a small machine: patience, not speed, is what these tests need.
        Assertions.SetDefaultExpectTimeout(90_000);
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Find(), Args = Switches });
    }

    /// <inheritdoc />
    public async Task DisposeAsync()
    {
        if (Browser is not null) await Browser.CloseAsync();
        _playwright?.Dispose();
    }

    /// <summary>Path of the browser; null lets Playwright take the one that it installed itself.</summary>
    private static string? Find()
    {
        if (Installed() is { } path) return path;
        if (OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess && File.Exists("/usr/bin/apt-get"))
        {
            Run("apt-get", "update");
            if (Run("apt-get", "install", "-y", "chromium") == 0 && Installed() is { } fetched) return fetched;
        }

        if (Microsoft.Playwright.Program.Main(["install", "chromium"]) == 0) return null;
        throw new InvalidOperationException("The browser tests need Chromium, Chrome or Edge. On Debian run: sudo apt-get install chromium. Elsewhere install Chrome or Edge, then run dotnet test again.");
    }

    private static string? Installed()
    {
        var folders = UsualFolders.Concat((Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries));
        return folders.SelectMany(folder => Names.Append("Google Chrome").Append("Chromium").Select(name => Path.Combine(folder, name))).FirstOrDefault(File.Exists);
    }

    private static int Run(string command, params string[] arguments)
    {
        var start = new ProcessStartInfo(command, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DEBIAN_FRONTEND"] = "noninteractive";
        using var process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        process.WaitForExit();
        return process.ExitCode;
    }
}
