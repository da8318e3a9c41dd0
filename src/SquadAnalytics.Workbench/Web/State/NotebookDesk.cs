using System.Text.RegularExpressions;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Workbench.Commands;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>The notebooks whose cells can be worked on: those that came with the program, and the logbook's own. Shared by all windows.</summary>
public sealed partial class NotebookDesk(OpenLogbook opened, KernelSource kernels, TimeProvider time) : IAsyncDisposable
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, OpenNotebook> _open = [];

    /// <summary>The folder of the logbook's own notebooks.</summary>
    public string OwnFolder => opened.Logbook.NotebooksFolder;

    /// <summary>Names of the notebooks that came with the program.</summary>
    public IReadOnlyList<string> ShippedNames { get; } = Shipped.NotebookNames();

    /// <summary>Names of the logbook's own notebooks.</summary>
    public IReadOnlyList<string> OwnNames() => Directory.Exists(OwnFolder)
        ? [.. Directory.EnumerateFiles(OwnFolder, "*.ipynb").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)]
        : [];

    /// <summary>A notebook, the same for all windows; null where there is none of that name.</summary>
    public OpenNotebook? Open(string name)
    {
        var shipped = ShippedNames.Contains(name) ? Path.Combine(Shipped.Notebooks, name + ".ipynb") : null;
        if (shipped is null && !OwnNames().Contains(name)) return null;
        lock (_lock)
        {
            var path = PathOf(name);
            if (!_open.TryGetValue(path, out var notebook))
                _open[path] = notebook = new OpenNotebook(name, path, shipped, new(kernels, OwnOrHere(), opened.Logbook.Folder, time));
            return notebook;
        }
    }

    /// <summary>Starts a spare process, so that neither the first cell nor the first completion waits for one.</summary>
    public void Warm() => kernels.Prepare();

    /// <summary>Makes an empty notebook of the logbook's own.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>Why it was not made, or null.</returns>
    public string? Create(string name)
    {
        if (!NamePattern().IsMatch(name)) return "A notebook's name has up to 60 letters, digits, hyphens or underscores, and no spaces.";
        if (ShippedNames.Contains(name) || OwnNames().Contains(name)) return $"There is a notebook {name} already.";
        try
        {
            Directory.CreateDirectory(OwnFolder);
            NotebookFile.Write(new Notebook([new NotebookCell(CellKind.Markdown, $"# {name}\n"), new NotebookCell(CellKind.Code, "")]), PathOf(name));
            return null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return error.Message;
        }
    }

    /// <summary>Deletes one of the logbook's own notebooks and ends its process.</summary>
    /// <returns>Why it was not deleted, or null.</returns>
    public async Task<string?> DeleteAsync(string name)
    {
        if (!OwnNames().Contains(name)) return null;
        OpenNotebook? notebook;
        lock (_lock) _open.Remove(PathOf(name), out notebook);
        if (notebook is not null) await notebook.DisposeAsync();
        try
        {
            File.Delete(PathOf(name));
            return null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return error.Message;
        }
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        foreach (var notebook in _open.Values) await notebook.DisposeAsync();
    }

    private string PathOf(string name) => Path.Combine(OwnFolder, name + ".ipynb");

    // Relative paths in cells start beside the logbook's own notebooks, or at the logbook where there are none yet.
    private string OwnOrHere() => Directory.Exists(OwnFolder) ? OwnFolder : opened.Logbook.Folder;

    [GeneratedRegex("^[A-Za-z0-9][A-Za-z0-9_-]{0,59}$")]
    private static partial Regex NamePattern();
}
