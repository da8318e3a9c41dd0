using System.Globalization;
using System.Reflection;
using System.Runtime.InteropServices;
using System.Text;
using Microsoft.DotNet.Interactive;
using SquadAnalytics.Notebooks.Wire;
using SquadAnalytics.Reporting;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>What every notebook finds in scope: the library's namespaces, and the logbook.</summary>
internal static class Prelude
{
    /// <summary>The name by which cells know the logbook.</summary>
    public const string LogbookName = "logbook";

    private static readonly string[] Standard = ["System", "System.Collections.Generic", "System.Linq"];

    /// <summary>The assemblies that cells can use without asking for them.</summary>
    public static IReadOnlyList<Assembly> Assemblies { get; } = [typeof(Seconds).Assembly, typeof(Finding).Assembly];

    /// <summary>What runs before the first cell: the namespaces, and the name of the logbook, which has its value once one is opened.</summary>
    public static string Code() => $"{Usings()}{typeof(Logbook).FullName} {LogbookName} = null;";

    /// <summary>The <c>using</c> lines of all namespaces that the assemblies offer.</summary>
    public static string Usings()
    {
        var offered = Assemblies
            .SelectMany(static assembly => assembly.GetExportedTypes())
            .Select(static type => type.Namespace)
            .OfType<string>()
            .Where(static name => name.StartsWith("SquadAnalytics", StringComparison.Ordinal));
        var code = new StringBuilder($"using static {typeof(Kernel).FullName};\n");
        foreach (var name in Standard.Concat(offered.Distinct().Order(StringComparer.Ordinal))) code.Append(CultureInfo.InvariantCulture, $"using {name};\n");
        return code.ToString();
    }

    /// <summary>What the process runs on.</summary>
    public static KernelReady Identity() => new(
        "Microsoft.DotNet.Interactive " + Version(typeof(Kernel).Assembly),
        RuntimeInformation.FrameworkDescription,
        "SquadAnalytics " + Version(typeof(Seconds).Assembly));

    private static string Version(Assembly assembly) =>
        assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0]
        ?? assembly.GetName().Version?.ToString()
        ?? "unknown";
}
