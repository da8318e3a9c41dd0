using System.Globalization;
using System.Reflection;
using System.Text;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive.CSharp;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>
/// Gives each cell a file name and debug information, so that a stack trace names the cell and the line. The engine keeps the
/// options for that in a private field; where it is not found, traces come without lines and everything else works.
/// </summary>
internal sealed class CellSource(CSharpKernel kernel)
{
    private static readonly FieldInfo? Options = typeof(CSharpKernel)
        .GetFields(BindingFlags.Instance | BindingFlags.NonPublic)
        .FirstOrDefault(static field => field.FieldType == typeof(ScriptOptions));

    /// <summary>The file name of a cell, as it stands in stack traces.</summary>
    public static string FileName(int number) => string.Create(CultureInfo.InvariantCulture, $"cell-{number}.csx");

    /// <summary>Names the cell that is about to be run.</summary>
    public void Name(int number)
    {
        if (Options?.GetValue(kernel) is ScriptOptions options)
            Options.SetValue(kernel, options.WithEmitDebugInformation(true).WithFilePath(FileName(number)).WithFileEncoding(Encoding.UTF8));
    }
}
