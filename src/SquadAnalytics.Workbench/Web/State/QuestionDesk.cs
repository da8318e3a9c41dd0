using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Workbench.Commands;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>Runs the shipped notebooks on the open logbook and keeps their reports. A spare process is kept warm for the next question.</summary>
public sealed class QuestionDesk(OpenLogbook opened, KernelSource kernels, TimeProvider time)
{
    /// <summary>Names of the notebooks that can be asked.</summary>
    public IReadOnlyList<string> Names { get; } = Shipped.NotebookNames();

    /// <summary>Reads a notebook; null where there is none of that name.</summary>
    public Notebook? Read(string name) => Names.Contains(name) ? NotebookFile.Read(Path.Combine(Shipped.Notebooks, name + ".ipynb")) : null;

    /// <summary>Starts a spare process, so that the next question does not wait for one.</summary>
    public void Warm() => kernels.Prepare();

    /// <summary>Runs a notebook and keeps its report.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="settings">Parameters that differ from their defaults.</param>
    /// <param name="onCell">Told after each cell.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <returns>The run, and the name under which its report is kept.</returns>
    public async Task<AnsweredQuestion> AskAsync(string name, IReadOnlyList<ParameterSetting> settings, Action<CellRun> onCell, CancellationToken cancellation)
    {
        var request = new RunRequest(name, Read(name)!, Shipped.Notebooks) { LogbookFolder = opened.Logbook.Folder, Settings = settings };
        var run = await new NotebookRunner(kernels, time).RunAsync(request, onCell, cancellation);
        var folder = Path.Combine(opened.Logbook.ReportsFolder, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{name}-{run.Started:yyyyMMdd-HHmmss}"));
        KeptRun.Write(run, folder);
        Warm();
        return new AnsweredQuestion(run, Path.GetFileName(folder));
    }
}
