using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using SquadAnalytics.Notebooks.Hosting;
using SquadAnalytics.Notebooks.Sql;

namespace SquadAnalytics.Notebooks.Jupyter;

/// <summary>
/// What makes the engine's own kernel, under Jupyter, like the workbench: the forms of the library's values, its namespaces in scope, and
/// the SQL kernel. The engine runs it when a cell loads the package.
/// </summary>
public static class JupyterExtension
{
    /// <summary>Prepares a kernel, once.</summary>
    /// <param name="root">The kernel that all others belong to; it must have a C# kernel.</param>
    /// <exception cref="ArgumentException">There is no C# kernel.</exception>
    public static void Load(Kernel root)
    {
        ArgumentNullException.ThrowIfNull(root);
        if (root is not CompositeKernel composite || composite.ChildKernels.OfType<CSharpKernel>().FirstOrDefault() is not { } csharp)
            throw new ArgumentException("The library needs a C# kernel to be loaded into.", nameof(root));
        if (composite.FindKernelByName(SqlKernel.KernelName) is not null) return;
        Formatters.Register();
        composite.Add(new SqlKernel(csharp));
        // Code that runs while the extension itself does would be forgotten when it ends.
        csharp.DeferCommand(new SubmitCode(Prelude.Usings()));
    }
}
