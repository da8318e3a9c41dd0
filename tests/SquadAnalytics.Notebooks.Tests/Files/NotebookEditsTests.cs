using SquadAnalytics.Notebooks.Files;

namespace SquadAnalytics.Notebooks.Tests.Files;

/// <summary>Editing with a way back. Common practice, no source.</summary>
public sealed class NotebookEditsTests
{
    [Fact]
    public void Letters_typed_into_one_cell_are_undone_at_once()
    {
        var edits = Edits("a", "b");
        var id = edits.Notebook.Cells[0].Id;
        foreach (var text in new[] { "x", "xy", "xyz" }) edits.Write(id, text);
        Assert.Equal(["xyz", "b"], Sources(edits));
        edits.Undo();
        Assert.Equal(["a", "b"], Sources(edits));
        edits.Redo();
        Assert.Equal(["xyz", "b"], Sources(edits));
    }

    [Fact]
    public void Adding_moving_and_deleting_cells_is_undone_step_by_step()
    {
        var edits = Edits("a", "b");
        var added = edits.Add(edits.Notebook.Cells[0].Id, CellKind.Code, "sql");
        Assert.Equal("#!sql\n", added.Source);
        edits.Write(added.Id, "select 1");
        edits.Move(added.Id, 1);
        edits.Delete(edits.Notebook.Cells[0].Id);
        Assert.Equal(["b", "select 1"], Sources(edits));
        Assert.Equal("sql", edits.Notebook.Cells[1].Language);
        edits.Undo();
        Assert.Equal(["a", "b", "select 1"], Sources(edits));
        edits.Undo();
        Assert.Equal(["a", "select 1", "b"], Sources(edits));
        edits.Undo();
        edits.Undo();
        Assert.Equal(["a", "b"], Sources(edits));
        Assert.False(edits.CanUndo);
        Assert.False(edits.IsChanged);
    }

    [Fact]
    public void A_change_after_an_undo_drops_what_was_undone()
    {
        var edits = Edits("a");
        var id = edits.Notebook.Cells[0].Id;
        edits.Write(id, "b");
        edits.Undo();
        edits.Write(id, "c");
        Assert.False(edits.CanRedo);
        Assert.Equal(["c"], Sources(edits));
    }

    [Fact]
    public void A_saved_notebook_is_unchanged_until_the_next_letter()
    {
        var edits = Edits("a");
        var id = edits.Notebook.Cells[0].Id;
        edits.Write(id, "b");
        edits.Saved();
        Assert.False(edits.IsChanged);
        edits.Write(id, "bc");
        Assert.True(edits.IsChanged);
        edits.Undo();
        Assert.Equal(["b"], Sources(edits));
        Assert.False(edits.IsChanged);
    }

    [Fact]
    public void A_cell_does_not_move_out_of_the_notebook()
    {
        var edits = Edits("a", "b");
        edits.Move(edits.Notebook.Cells[0].Id, -1);
        edits.Move(edits.Notebook.Cells[1].Id, 5);
        Assert.Equal(["a", "b"], Sources(edits));
        Assert.False(edits.CanUndo);
    }

    private static NotebookEdits Edits(params string[] sources) => new(TestNotebook.Of([.. sources.Select(source => TestNotebook.Code(source))]));

    private static IEnumerable<string> Sources(NotebookEdits edits) => edits.Notebook.Cells.Select(cell => cell.Source);
}
