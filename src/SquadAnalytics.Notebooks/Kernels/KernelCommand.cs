using System.Reflection;
using System.Runtime.InteropServices;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>The command that starts a notebook's process: this program again, with a verb that its help does not show.</summary>
/// <param name="FileName">The executable.</param>
/// <param name="Arguments">What stands behind it.</param>
public sealed record KernelCommand(string FileName, IReadOnlyList<string> Arguments)
{
    /// <summary>The verb by which a program knows that it is to become a notebook's process.</summary>
    public const string Verb = "notebook-process";

    /// <summary>The command that starts the running program again.</summary>
    /// <exception cref="InvalidOperationException">The program was not started from an assembly file.</exception>
    public static KernelCommand ForThisProgram()
    {
        var entry = Assembly.GetEntryAssembly()?.Location;
        return string.IsNullOrEmpty(entry)
            ? throw new InvalidOperationException("A notebook's process can only be started by a program that lies in a file.")
            : ForAssembly(entry);
    }

    /// <summary>The command that starts a program given by its assembly file.</summary>
    /// <remarks>
    /// The program is started the way the running one was. <see cref="Environment.ProcessPath"/> alone would not do: it is the
    /// general host, or a test host, as often as it is this program.
    /// </remarks>
    /// <param name="assemblyFile">The program's <c>.dll</c>.</param>
    public static KernelCommand ForAssembly(string assemblyFile)
    {
        ArgumentException.ThrowIfNullOrEmpty(assemblyFile);
        var own = Path.ChangeExtension(assemblyFile, OperatingSystem.IsWindows() ? ".exe" : null);
        if (string.Equals(Environment.ProcessPath, own, StringComparison.OrdinalIgnoreCase)) return new(own, [Verb]);
        return new(GeneralHost() ?? own, GeneralHost() is null ? [Verb] : ["exec", assemblyFile, Verb]);
    }

    private static string? GeneralHost()
    {
        var name = OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet";
        if (string.Equals(Path.GetFileName(Environment.ProcessPath), name, StringComparison.OrdinalIgnoreCase)) return Environment.ProcessPath;
        // The runtime lies three folders below its host: shared/Microsoft.NETCore.App/VERSION.
        var host = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", name));
        return File.Exists(host) ? host : null;
    }
}
