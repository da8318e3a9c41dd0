using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Tests;

/// <summary>Notebook processes for tests, hosted by the executable that users start.</summary>
internal static class TestKernel
{
    public static KernelCommand Command { get; } =
        KernelCommand.ForAssembly(Path.Combine(AppContext.BaseDirectory, "SquadAnalytics.Workbench.dll"));

    /// <summary>Limits that are soon reached.</summary>
    public static KernelLimits Tight { get; } = new()
    {
        CellTime = TimeSpan.FromSeconds(90),
        ManagedBytes = 400L << 20,
        ResidentBytes = 800L << 20,
        OutputSize = 2L << 20,
    };

    public static async Task<KernelProcess> StartAsync(KernelLimits? limits = null)
    {
        var kernel = KernelProcess.Start(Command, limits ?? Tight);
        await kernel.ReadyAsync();
        return kernel;
    }

    public static Task<CellResult> RunAsync(this KernelProcess kernel, string code, CancellationToken cancellationToken = default) =>
        kernel.RunAsync(new CellCode(1, "csharp", code), null, cancellationToken);
}
