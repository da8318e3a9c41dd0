using SquadAnalytics.Notebooks.Files;

namespace SquadAnalytics.Notebooks.Running;

/// <summary>What is to be run, and on what.</summary>
/// <param name="Name">The notebook's name: its file name without ending.</param>
/// <param name="Notebook">The notebook.</param>
/// <param name="WorkingFolder">Where relative paths in cells start.</param>
public sealed record RunRequest(string Name, Notebook Notebook, string WorkingFolder)
{
    /// <summary>The logbook's folder, or null for none.</summary>
    public string? LogbookFolder { get; init; }

    /// <summary>A line that says that the data are invented, or null for a club's own.</summary>
    public string? DataNote { get; init; }

    /// <summary>Values chosen for parameters.</summary>
    public IReadOnlyList<ParameterSetting> Settings { get; init; } = [];
}
