using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>Names within a logbook folder, beside its tables.</summary>
internal sealed class Layout(string folder)
{
    public const string DraftsName = "drafts";
    public const string ImportsName = "imports";
    public const string ReportsName = "reports";
    public const string NotebooksName = "notebooks";
    public const string SetAsideName = "set-aside";
    public const string PreviousName = ".previous";
    public const string PendingName = ".pending";
    public const string LockName = ".lock";
    public const string AcceptName = "accept.json";

    public string Folder => folder;

    /// <summary>Append-only files of sessions being typed.</summary>
    public string Drafts => Path.Combine(folder, DraftsName);

    /// <summary>Copies of imported files.</summary>
    public string Imports => Path.Combine(folder, ImportsName);

    /// <summary>Kept reports, each a file or a folder of its own.</summary>
    public string Reports => Path.Combine(folder, ReportsName);

    /// <summary>Files changed outside that recovery would otherwise have overwritten.</summary>
    public string SetAside => Path.Combine(folder, SetAsideName);

    /// <summary>The files that the last accept replaced, as they were before it, and its record.</summary>
    public string Previous => Path.Combine(folder, PreviousName);

    /// <summary>The record of the last accept.</summary>
    public string PreviousRecord => Path.Combine(Previous, AcceptName);

    /// <summary>A transaction on its way.</summary>
    public string Pending => Path.Combine(folder, PendingName);

    public string PendingNew => Path.Combine(Pending, "new");

    public string PendingBefore => Path.Combine(Pending, "before");

    /// <summary>The commit mark: where it exists, the transaction counts and is finished; where it does not, nothing happened.</summary>
    public string CommitMark => Path.Combine(Pending, "commit.json");

    public string Lock => Path.Combine(folder, LockName);

    /// <summary>A path within the folder.</summary>
    public string At(string path) => Within(folder, path);

    /// <summary>Whether a path names a table, or a file below one of the named folders, and leads nowhere else.</summary>
    public static bool Belongs(string path, IReadOnlyList<string> folders)
    {
        if (LogbookTables.Files.Contains(path)) return true;
        var parts = path.Split('/');
        return parts.Length > 1 && folders.Contains(parts[0]) && parts.All(part => part.Length > 0 && part is not ("." or "..") && part.IndexOfAny(['\\', ':', '\0']) < 0);
    }

    /// <summary>A path, its parts separated by <c>/</c>, below a root.</summary>
    public static string Within(string root, string path) => Path.Combine([root, .. path.Split('/')]);
}
