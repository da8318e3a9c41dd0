using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Workbench.Web.State;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>What may run without asking.</summary>
public sealed class TrustedNotebooksTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("trust").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Every_notebook_that_comes_along_is_known_by_what_is_built_in()
    {
        var files = Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "notebooks"), "*.ipynb");
        Assert.NotEmpty(files);
        Assert.Equal(files.Select(file => CodeHash.Of(NotebookFile.Read(file))).Order(), TrustedNotebooks.Shipped().Order());
    }

    [Fact]
    public void A_shipped_notebook_that_was_tampered_with_is_not_trusted()
    {
        var notebook = NotebookFile.Read(Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "notebooks"), "*.ipynb")[0]);
        Assert.True(Trusted().IsTrusted(notebook));
        var code = notebook.Cells.First(cell => cell.Kind == CellKind.Code);
        Assert.False(Trusted().IsTrusted(notebook.With(code with { Source = code.Source + " " })));
        var prose = notebook.Cells.First(cell => cell.Kind == CellKind.Markdown);
        Assert.True(Trusted().IsTrusted(notebook.With(prose with { Source = prose.Source + " " })));
    }

    [Fact]
    public void Consent_is_remembered_outside_the_notebooks_folder_for_exactly_that_code()
    {
        var notebook = new Notebook([new NotebookCell(CellKind.Code, "1 + 1")]);
        Assert.False(Trusted().IsTrusted(notebook));
        Trusted().Trust(notebook);
        Assert.True(Trusted().IsTrusted(notebook));
        Assert.False(Trusted().IsTrusted(new Notebook([new NotebookCell(CellKind.Code, "1 + 2")])));
    }

    [Fact]
    public void Where_nothing_can_be_written_consent_holds_until_the_end()
    {
        var blocked = Path.Combine(_folder, "a-file");
        File.WriteAllText(blocked, "");
        var trusted = new TrustedNotebooks(Path.Combine(blocked, "trusted-notebooks.txt"));
        var notebook = new Notebook([new NotebookCell(CellKind.Code, "1 + 1")]);
        trusted.Trust(notebook);
        Assert.True(trusted.IsTrusted(notebook));
    }

    private TrustedNotebooks Trusted() => new(Path.Combine(_folder, "data", "trusted-notebooks.txt"));
}
