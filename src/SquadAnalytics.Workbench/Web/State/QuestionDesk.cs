using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Parameters;
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

    /// <summary>Lets a spare process practise a question whose form is open, so that its answer comes quickly.</summary>
    /// <param name="name">The notebook's name.</param>
    /// <param name="settings">The parameters as they stand in the form.</param>
    public void Practise(string name, IReadOnlyList<ParameterSetting> settings)
    {
        try
        {
            if (Request(name, settings) is { } request) new NotebookRunner(kernels, time).Practise(request);
        }
        catch (Exception error) when (error is ParameterException or NotebookFormatException or IOException or UnauthorizedAccessException)
        {
            // Whoever asks is told.
        }
    }

    /// <summary>Runs a notebook and keeps its report.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="settings">Parameters that differ from their defaults.</param>
    /// <param name="onCell">Told after each cell.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <returns>The run, and the name under which its report is kept.</returns>
    public async Task<AnsweredQuestion> AskAsync(string name, IReadOnlyList<ParameterSetting> settings, Action<CellRun> onCell, CancellationToken cancellation)
    {
        var run = await new NotebookRunner(kernels, time).RunAsync(Request(name, settings)!, onCell, cancellation);
        var folder = Path.Combine(opened.Logbook.ReportsFolder, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{name}-{run.Started:yyyyMMdd-HHmmss}"));
        KeptRun.Write(run, folder);
        Practise(name, settings);
        return new AnsweredQuestion(run, Path.GetFileName(folder));
    }

    private RunRequest? Request(string name, IReadOnlyList<ParameterSetting> settings) => Read(name) is { } notebook
        ? new RunRequest(name, notebook, Shipped.Notebooks) { LogbookFolder = opened.Logbook.Folder, Settings = settings }
        : null;
}
