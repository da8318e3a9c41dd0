using System.Runtime.InteropServices;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>
/// Lets this process write no file beyond a size, as the system's own limit does: a disk that is full for every file that is larger, without
/// a file system of its own.
/// </summary>
internal static class FileSizeLimit
{
    private const int FileSize = 1; // RLIMIT_FSIZE on Linux and macOS
    private const int TooLarge = 25; // SIGXFSZ, which would end the process
    private const nint Ignore = 1; // SIG_IGN: the write fails instead

    /// <summary>Sets the limit.</summary>
    /// <param name="bytes">The largest size of a file; null lifts it.</param>
    public static void Set(int? bytes)
    {
        _ = Signal(TooLarge, Ignore);
        if (Get(FileSize, out var limit) != 0) throw new InvalidOperationException($"The limit of file sizes cannot be read: {Marshal.GetLastPInvokeErrorMessage()}.");
        limit.Soft = bytes is { } size ? (nuint)size : limit.Hard;
        if (Set(FileSize, in limit) != 0) throw new InvalidOperationException($"The limit of file sizes cannot be set: {Marshal.GetLastPInvokeErrorMessage()}.");
    }

    [DllImport("libc", EntryPoint = "signal", SetLastError = true)]
    private static extern nint Signal(int number, nint handler);

    [DllImport("libc", EntryPoint = "getrlimit", SetLastError = true)]
    private static extern int Get(int resource, out Limit limit);

    [DllImport("libc", EntryPoint = "setrlimit", SetLastError = true)]
    private static extern int Set(int resource, in Limit limit);

    [StructLayout(LayoutKind.Sequential)]
    private struct Limit
    {
        public nuint Soft;
        public nuint Hard;
    }
}
