using System.Diagnostics;
using System.Globalization;
using SquadAnalytics.Storage;
using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Tries a logbook on a disk that is full, and on one that cannot be written.</summary>
internal sealed class LogbookDiskJob : Job
{
    private const int PageBytes = 4096;

    public override string Name => "logbook-disk";

    public override string Summary => "Tries a logbook where files cannot grow, on a full disk and on a read-only one (Linux, macOS).";

    public override string Usage => """
        logbook-disk
        First with a limit on the size of files, which needs no rights. Then, where a tmpfs of 2 MB can be mounted (as root, or as
        'unshare --map-root-user --mount dotnet SquadAnalytics.Benchmarks.dll logbook-disk'), on a full and on a read-only disk.
        Exit code 0 when all is well, 1 when a logbook was harmed.
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var place = Directory.CreateTempSubdirectory("logbook-disk-").FullName;
        var faults = new List<string>();
        try
        {
            faults.AddRange(LimitedFiles(place));
            foreach (var entry in Directory.GetDirectories(place)) Directory.Delete(entry, recursive: true);
            if (Mount("-t", "tmpfs", "-o", "size=2m,mode=700", "tmpfs", place) == 0) faults.AddRange(OnDiskOfItsOwn(place));
            else Console.WriteLine("A tmpfs cannot be mounted here: tried with limited files only.");
        }
        finally
        {
            Directory.Delete(place, recursive: true);
        }

        foreach (var fault in faults) Console.WriteLine(fault);
        return faults.Count == 0 ? 0 : 1;
    }

    private static List<string> OnDiskOfItsOwn(string place)
    {
        try
        {
            return [.. FullDisk(place), .. FullDiskWhileTyping(place), .. ReadOnlyDisk(place)];
        }
        finally
        {
            using var unmount = Process.Start("umount", [place]);
            unmount.WaitForExit();
        }
    }

    /// <summary>Accepts a change with an ever larger limit on files, so that each file of the transaction once cannot be written to its end.</summary>
    private static List<string> LimitedFiles(string place)
    {
        var folder = Path.Combine(place, "limited");
        using (var logbook = Logbook.Create(folder, KilledChange.Name(0))) logbook.Commit(KilledChange.First(earlier: 100));
        var faults = new List<string>();
        var (state, refused) = (0, 0);

        // Below 64 bytes not even the lock could be written, which is another matter: the logbook would open for reading only.
        for (var bytes = 64; state < 2; bytes += 1 + (bytes / 8))
        {
            try
            {
                using var logbook = Logbook.Open(folder);
                FileSizeLimit.Set(bytes);
                logbook.Commit(KilledChange.Next(logbook.Squad, state + 1));
                state++;
            }
            catch (LogbookNotWrittenException error)
            {
                refused++;
                if (!error.Message.Contains("File too large", StringComparison.Ordinal)) faults.Add($"files of {bytes} bytes: {error.Message}");
            }
            finally
            {
                FileSizeLimit.Set(null);
            }

            if (KilledChange.Check(folder, state).Fault is { } fault) faults.Add($"files of {bytes} bytes: {fault}");
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"limited files: {refused} times refused with nothing changed, then accepted"));
        if (refused < 10) faults.Add("No file was really too large.");
        return faults;
    }

    /// <summary>Accepts a change with ever more space left, page by page, so that each write of the transaction once meets the full disk.</summary>
    private static List<string> FullDisk(string place)
    {
        var folder = Path.Combine(place, "logbook");
        using (var logbook = Logbook.Create(folder, KilledChange.Name(0))) logbook.Commit(KilledChange.First(earlier: 100));
        var faults = new List<string>();
        var (state, refused) = (0, 0);
        for (var pages = 0; state < 3; pages++)
        {
            Fill(place, pages);
            try
            {
                using var logbook = Logbook.Open(folder);
                logbook.Commit(KilledChange.Next(logbook.Squad, state + 1));
                state++;
            }
            catch (LogbookNotWrittenException error)
            {
                refused++;
                if (!error.Message.Contains("No space left", StringComparison.Ordinal)) faults.Add($"{pages} pages left: {error.Message}");
            }

            File.Delete(Path.Combine(place, "filler"));
            if (KilledChange.Check(folder, state).Fault is { } fault) faults.Add($"{pages} pages left: {fault}");
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"full disk: {refused} times refused with nothing changed, then accepted"));
        if (refused < 10) faults.Add("The disk was never really full.");
        return faults;
    }

    private static IEnumerable<string> FullDiskWhileTyping(string place)
    {
        using var logbook = Logbook.Open(Path.Combine(place, "logbook"));
        var draft = logbook.StartDraft();
        Fill(place, 1);
        var typed = 0;
        var message = "";
        while (message.Length == 0 && typed < 1000)
        {
            try
            {
                draft.Type("a1", string.Create(CultureInfo.InvariantCulture, $"set {typed + 1}"), "61.5");
                typed++;
            }
            catch (LogbookNotWrittenException error)
            {
                message = error.Message;
            }
        }

        if (!message.Contains("No space left", StringComparison.Ordinal)) yield return $"typing on a full disk: '{message}'";
        File.Delete(Path.Combine(place, "filler"));
        draft.Type("a1", "afterwards", "62");
        var found = logbook.Drafts.Single();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"typing: {typed} cells before the disk was full, {found.Cells.Count} found afterwards"));
        if (found.Cells.Count != typed + 1) yield return $"{typed} cells typed and one afterwards, {found.Cells.Count} found.";
        logbook.DiscardDraft(draft.Id);
    }

    /// <summary>A change is accepted and not finished when the disk becomes read-only: it is read as accepted.</summary>
    private static IEnumerable<string> ReadOnlyDisk(string place)
    {
        var folder = Path.Combine(place, "logbook");
        var cut = new Disk((what, path) =>
        {
            if (what == "replace" && path.EndsWith("set-times.csv", StringComparison.Ordinal)) throw new IOException("unplugged");
        });
        int number;
        string? message = null;
        using (var logbook = Logbook.Open(folder, null, cut))
        {
            number = KilledChange.NumberOf(logbook) + 1;
            try
            {
                logbook.Commit(KilledChange.Next(logbook.Squad, number));
            }
            catch (LogbookNotWrittenException error)
            {
                message = error.Message;
            }
        }

        if (message?.StartsWith("The change is safe on disk", StringComparison.Ordinal) != true) yield return $"unplugged: {message}";
        if (Mount("-o", "remount,ro", place) != 0) yield return "The disk cannot be made read-only.";
        using (var logbook = Logbook.Open(folder))
        {
            if (!logbook.IsReadOnly) yield return "A logbook on a read-only disk says that it can be written.";
            if (!(logbook.ReadOnlyReason ?? "").Contains("cannot be written", StringComparison.Ordinal)) yield return $"reason: {logbook.ReadOnlyReason}";
            if (KilledChange.NumberOf(logbook) != number || logbook.Squad.Name != KilledChange.Name(number)) yield return $"{logbook} is not state {number}";
            var zip = Path.Combine(Path.GetTempPath(), $"logbook-disk-{Environment.ProcessId}.zip");
            logbook.Backup(zip);
            File.Delete(zip);
            Console.WriteLine($"read-only disk: {logbook.ReadOnlyReason}");
        }

        Mount("-o", "remount,rw", place);
        if (KilledChange.Check(folder, number).Fault is { } fault) yield return fault;
    }

    /// <summary>Fills the disk until about so many pages are left.</summary>
    private static void Fill(string place, int pagesLeft)
    {
        var free = new DriveInfo(place).AvailableFreeSpace - (pagesLeft * PageBytes);
        File.WriteAllBytes(Path.Combine(place, "filler"), new byte[Math.Max(0, free)]);
    }

    private static int Mount(params string[] arguments)
    {
        try
        {
            using var mount = Process.Start(new ProcessStartInfo("mount", arguments) { RedirectStandardError = true })!;
            mount.StandardError.ReadToEnd();
            mount.WaitForExit();
            return mount.ExitCode;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return -1; // There is no such command on this system.
        }
    }
}
