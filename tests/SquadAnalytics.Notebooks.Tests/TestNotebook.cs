using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Notebooks.Tests;

/// <summary>Small notebooks made for tests.</summary>
internal static class TestNotebook
{
    public static Notebook Of(params NotebookCell[] cells) => new(cells);

    public static NotebookCell Prose(string source) => new(CellKind.Markdown, source);

    public static NotebookCell Code(string source, params string[] tags) => new(CellKind.Code, source) { Tags = tags };

    public static async Task<NotebookRun> RunAsync(Notebook notebook, params ParameterSetting[] settings)
    {
        await using var kernels = new SquadAnalytics.Notebooks.Kernels.KernelSource(TestKernel.Command, TestKernel.Tight);
        return await new NotebookRunner(kernels, TimeProvider.System).RunAsync(new RunRequest("test", notebook, AppContext.BaseDirectory) { Settings = settings });
    }
}
