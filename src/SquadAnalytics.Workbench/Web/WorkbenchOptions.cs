namespace SquadAnalytics.Workbench.Web;

/// <summary>How the workbench is opened.</summary>
/// <param name="LogbookFolder">Folder of the logbook.</param>
/// <param name="OpenBrowser">Whether a browser window is opened.</param>
public sealed record WorkbenchOptions(string LogbookFolder, bool OpenBrowser)
{
    /// <summary>How long a notebook's process may lie idle before it is given up.</summary>
    public TimeSpan IdleTime { get; init; } = Notebooks.Kernels.KernelLimits.Default.IdleTime;
}
