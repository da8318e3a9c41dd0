namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>The exclusive right to write a logbook. The operating system gives it back when the process ends, however it ends.</summary>
internal sealed class FolderLock : IDisposable
{
    private readonly FileStream _file;

    private FolderLock(FileStream file) => _file = file;

    /// <summary>Takes the lock, or says why it cannot be had.</summary>
    public static FolderLock? TryTake(Layout layout, out string? reason)
    {
        try
        {
            var taken = new FolderLock(new FileStream(layout.Lock, Disk.Owned(FileMode.OpenOrCreate, FileShare.None)));
            try
            {
                RequireNewNames(layout);
                reason = null;
                return taken;
            }
            catch
            {
                taken.Dispose();
                throw;
            }
        }
        catch (UnauthorizedAccessException)
        {
            reason = "the folder cannot be written";
        }
        catch (IOException error)
        {
            reason = IsHeld(error) ? "another program has it open for writing" : $"the folder cannot be written ({error.Message})";
        }

        return null;
    }

    public void Dispose() => _file.Dispose();

    // A lock file can be writable in a folder that takes no new names.
    private static void RequireNewNames(Layout layout)
    {
        if (Directory.Exists(layout.Pending)) return; // A change lies there unfinished; finishing it will tell.
        Directory.CreateDirectory(layout.Pending);
        Directory.Delete(layout.Pending);
    }

    // EWOULDBLOCK is 11 on Linux and 35 on macOS; 0x80070020 is Windows' sharing violation.
    private static bool IsHeld(IOException error) => error.HResult is 11 or 35 or unchecked((int)0x80070020);
}
