namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>Waits for the data frame library: most notebooks never load it, and it is not to be loaded for its formatter's sake.</summary>
internal static class DataFrames
{
    private const string AssemblyName = "Microsoft.Data.Analysis";

    /// <summary>Does something once the library is loaded; at once where it is.</summary>
    public static void WhenLoaded(Action register)
    {
        if (AppDomain.CurrentDomain.GetAssemblies().Any(static assembly => assembly.GetName().Name == AssemblyName)) register();
        else AppDomain.CurrentDomain.AssemblyLoad += OnLoad;

        void OnLoad(object? sender, AssemblyLoadEventArgs loaded)
        {
            if (loaded.LoadedAssembly.GetName().Name != AssemblyName) return;
            AppDomain.CurrentDomain.AssemblyLoad -= OnLoad;
            register();
        }
    }
}
