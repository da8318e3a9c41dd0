using System.Net;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Formatting;
using SquadAnalytics.Notebooks.Hosting;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Sql;
using SquadAnalytics.Reporting.Figures;

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
        Formatter.Register<Figure>(static (figure, writer) => writer.Write(OneWidth(figure)), MimeTypes.Html);
        composite.Add(new SqlKernel(new EngineValues(csharp)));
        // Code that runs while the extension itself does would be forgotten when it ends.
        csharp.DeferCommand(new SubmitCode(Prelude.Usings()));
    }

    /// <summary>A figure as one drawing on white ground: the page that chooses between two widths and follows light and dark is not there.</summary>
    private static string OneWidth(Figure figure)
    {
        var svg = figure.ToSvg();
        return $"<figure style=\"margin: 0\">{svg[svg.IndexOf("<svg", StringComparison.Ordinal)..]}<figcaption><strong>{WebUtility.HtmlEncode(figure.Title)}</strong> {WebUtility.HtmlEncode(figure.Caption)}</figcaption></figure>";
    }
}
