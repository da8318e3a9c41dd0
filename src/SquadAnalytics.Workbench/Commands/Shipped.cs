namespace SquadAnalytics.Workbench.Commands;

/// <summary>What lies beside the program: notebooks and the sample squad.</summary>
internal static class Shipped
{
    /// <summary>The folder of the notebooks.</summary>
    public static string Notebooks => Path.Combine(AppContext.BaseDirectory, "notebooks");

    /// <summary>The logbook of the invented sample squad.</summary>
    public static string SampleSquad => Path.Combine(AppContext.BaseDirectory, "sample-data", "squad");

    /// <summary>The names of the notebooks, without ending.</summary>
    public static IReadOnlyList<string> NotebookNames() => Directory.Exists(Notebooks)
        ? [.. Directory.EnumerateFiles(Notebooks, "*.ipynb").Select(static file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)]
        : [];
}
