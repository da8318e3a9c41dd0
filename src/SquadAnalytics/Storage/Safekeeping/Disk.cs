using System.Runtime.InteropServices;
using System.Text;

namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>The few operations that change a disk. Files and folders are readable by their owner only.</summary>
/// <param name="beforeStep">Called before each operation with its name and path; a test lets it throw to cut the work short there.</param>
internal sealed class Disk(Action<string, string>? beforeStep = null)
{
    private const UnixFileMode OwnerFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode OwnerFolder = OwnerFile | UnixFileMode.UserExecute;

    /// <summary>Options to write a file that, where it is made, only its owner can read.</summary>
    public static FileStreamOptions Owned(FileMode mode, FileShare share)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.Write, Share = share };

        // On Windows a file inherits the access of its folder, which in a user's profile is the owner's alone.
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnerFile;
        return options;
    }

    public void CreateFolder(string path)
    {
        beforeStep?.Invoke("create folder", path);
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(path);
        else Directory.CreateDirectory(path, OwnerFolder);
    }

    /// <summary>Writes a file through to the disk.</summary>
    public void Write(string path, ReadOnlyMemory<byte> content)
    {
        beforeStep?.Invoke("write", path);
        using var file = new FileStream(path, Owned(FileMode.Create, FileShare.None));
        Writing(path, () => file.Write(content.Span));
        file.Flush(flushToDisk: true);
    }

    /// <summary>Copies a file through to the disk.</summary>
    public void Copy(string from, string to)
    {
        beforeStep?.Invoke("copy", to);
        using var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var file = new FileStream(to, Owned(FileMode.Create, FileShare.None));
        Writing(to, () => source.CopyTo(file));
        file.Flush(flushToDisk: true);
    }

    /// <summary>Writes to a file. That a file may not become so large, by the file system or by a quota, is told as any other failure to write.</summary>
    /// <remarks>The runtime turns the system's EFBIG into the mistake of a caller, which it is not.</remarks>
    public static void Writing(string path, Action write)
    {
        try
        {
            write();
        }
        catch (ArgumentOutOfRangeException error)
        {
            throw new IOException($"File too large: {path}", error);
        }
    }

    /// <summary>Puts a file in the place of another in one step.</summary>
    public void Replace(string from, string to)
    {
        beforeStep?.Invoke("replace", to);
        File.Move(from, to, overwrite: true);
    }

    public void MoveFolder(string from, string to)
    {
        beforeStep?.Invoke("move folder", to);
        Directory.Move(from, to);
    }

    /// <summary>Deletes a file or a folder with all that is in it; nothing happens where there is none.</summary>
    public void Delete(string path)
    {
        beforeStep?.Invoke("delete", path);
        if (File.Exists(path)) File.Delete(path);
        else if (Directory.Exists(path)) Directory.Delete(path, recursive: true);
    }

    /// <summary>Makes renames and new names in a folder durable.</summary>
    public void Sync(string folder)
    {
        beforeStep?.Invoke("sync", folder);
        if (OperatingSystem.IsWindows()) return; // NTFS journals names itself, and a folder cannot be flushed.
        var handle = Open(Encoding.UTF8.GetBytes(folder + '\0'), 0);
        if (handle < 0) throw new IOException($"Cannot open folder {folder} to flush it: {Marshal.GetPInvokeErrorMessage(Marshal.GetLastPInvokeError())}.");
        try
        {
            // Some network and overlay file systems have nothing to flush for a folder and say EINVAL (22); that is no failure.
            if (Flush(handle) != 0 && Marshal.GetLastPInvokeError() is var error and not 22) throw new IOException($"Cannot flush folder {folder}: {Marshal.GetPInvokeErrorMessage(error)}.");
        }
        finally
        {
            _ = Close(handle);
        }
    }

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    private static extern int Open(byte[] path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static extern int Flush(int handle);

    [DllImport("libc", EntryPoint = "close", SetLastError = true)]
    private static extern int Close(int handle);
}
