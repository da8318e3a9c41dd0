namespace SquadAnalytics.Notebooks.Files;

/// <summary>A notebook being edited: each change makes a new version, and can be undone and done again.</summary>
/// <param name="notebook">The notebook as it was opened.</param>
public sealed class NotebookEdits(Notebook notebook)
{
    private const int MostVersions = 200;
    private readonly List<Notebook> _versions = [notebook];
    private int _at;
    private Notebook _saved = notebook;
    private string? _writing;

    /// <summary>The notebook as it stands.</summary>
    public Notebook Notebook => _versions[_at];

    /// <summary>Whether it differs from what was saved last.</summary>
    public bool IsChanged => !ReferenceEquals(Notebook, _saved);

    /// <summary>Whether there is a change to undo.</summary>
    public bool CanUndo => _at > 0;

    /// <summary>Whether there is an undone change to do again.</summary>
    public bool CanRedo => _at < _versions.Count - 1;

    /// <summary>The cell of an identifier, or null.</summary>
    public NotebookCell? Cell(string id) => Notebook.Cells.FirstOrDefault(cell => cell.Id == id);

    /// <summary>Changes a cell's text. Changes of the same cell in a row count as one.</summary>
    public void Write(string id, string source)
    {
        ArgumentNullException.ThrowIfNull(source);
        source = source.ReplaceLineEndings("\n");
        if (Cell(id) is not { } cell || cell.Source == source) return;
        var next = Notebook.With(cell with { Source = source });
        if (_writing == id && !CanRedo) _versions[_at] = next;
        else Step(next);
        _writing = id;
    }

    /// <summary>Ends a run of changes of one cell, so that the next one can be undone by itself.</summary>
    public void Pause() => _writing = null;

    /// <summary>Adds an empty cell; code that is not the default language's begins with the line by which other programs know it.</summary>
    /// <param name="after">Identifier of the cell after which it comes; null for the top.</param>
    /// <param name="kind">What it is.</param>
    /// <param name="language">The kernel that runs it, for code.</param>
    /// <returns>The new cell.</returns>
    public NotebookCell Add(string? after, CellKind kind, string language = NotebookFile.DefaultLanguage)
    {
        var cell = new NotebookCell(kind, kind == CellKind.Code && language != NotebookFile.DefaultLanguage ? $"#!{language}\n" : "") { Language = language };
        var cells = Notebook.Cells.ToList();
        cells.Insert(after is null ? 0 : IndexOf(after) + 1, cell);
        Step(Notebook with { Cells = cells });
        return cell;
    }

    /// <summary>Removes a cell.</summary>
    public void Delete(string id) => Step(Notebook with { Cells = [.. Notebook.Cells.Where(cell => cell.Id != id)] });

    /// <summary>Moves a cell up (negative) or down.</summary>
    public void Move(string id, int by)
    {
        var cells = Notebook.Cells.ToList();
        var from = IndexOf(id);
        var to = Math.Clamp(from + by, 0, cells.Count - 1);
        if (from < 0 || from == to) return;
        var cell = cells[from];
        cells.RemoveAt(from);
        cells.Insert(to, cell);
        Step(Notebook with { Cells = cells });
    }

    /// <summary>Puts another version of the whole notebook in its place.</summary>
    public void Replace(Notebook version) => Step(version);

    /// <summary>Takes back the last change.</summary>
    public void Undo()
    {
        if (CanUndo) _at--;
        Pause();
    }

    /// <summary>Does an undone change again.</summary>
    public void Redo()
    {
        if (CanRedo) _at++;
        Pause();
    }

    /// <summary>Notes that the present version is the saved one.</summary>
    public void Saved()
    {
        _saved = Notebook;
        Pause();
    }

    private int IndexOf(string id) => Notebook.Cells.ToList().FindIndex(cell => cell.Id == id);

    private void Step(Notebook next)
    {
        Pause();
        _versions.RemoveRange(_at + 1, _versions.Count - _at - 1);
        _versions.Add(next);
        if (_versions.Count > MostVersions) _versions.RemoveAt(0);
        _at = _versions.Count - 1;
    }
}
