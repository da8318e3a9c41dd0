using System.ComponentModel;
using System.Diagnostics;

namespace SquadAnalytics.Workbench.Web;

/// <summary>Opens the user's browser. No browser or no display is no error: the address stands on the console.</summary>
internal static class BrowserWindow
{
    /// <summary>Tries to open an address.</summary>
    public static void TryOpen(string address)
    {
        try
        {
            if (OperatingSystem.IsWindows() || OperatingSystem.IsMacOS())
                Process.Start(new ProcessStartInfo(address) { UseShellExecute = true })?.Dispose();
            else if (HasDisplay())
                Process.Start(new ProcessStartInfo("xdg-open", [address]) { RedirectStandardOutput = true, RedirectStandardError = true })?.Dispose();
        }
        catch (Exception error) when (error is Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
        }
    }

    private static bool HasDisplay() =>
        Environment.GetEnvironmentVariable("DISPLAY") is { Length: > 0 } || Environment.GetEnvironmentVariable("WAYLAND_DISPLAY") is { Length: > 0 };
}
