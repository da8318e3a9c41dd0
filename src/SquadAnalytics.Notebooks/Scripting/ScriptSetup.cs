using System.Globalization;
using System.Reflection;
using System.Text;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;

namespace SquadAnalytics.Notebooks.Scripting;

/// <summary>How cells are compiled: what they can see, and under which file name.</summary>
internal sealed class ScriptSetup
{
    private readonly ScriptOptions _options;
    private ScriptReferences _references = new(Directory.GetCurrentDirectory());

    /// <param name="assemblies">The assemblies that cells can use without asking for them.</param>
    public ScriptSetup(IEnumerable<Assembly> assemblies) => _options = ScriptOptions.Default
        .WithLanguageVersion(LanguageVersion.Latest)
        .AddImports("System", "System.Text", "System.Collections", "System.Collections.Generic", "System.Threading.Tasks", "System.Linq")
        .AddReferences(typeof(Enumerable).Assembly, typeof(Kernel).Assembly)
        .AddReferences(assemblies)
        .WithEmitDebugInformation(true)
        .WithFileEncoding(Encoding.UTF8);

    /// <summary>The file name of a cell, as it stands in stack traces.</summary>
    public static string FileName(int number) => string.Create(CultureInfo.InvariantCulture, $"cell-{number}.csx");

    /// <summary>The options for a cell, which is compiled in the folder that is the current one.</summary>
    public ScriptOptions For(int cell)
    {
        var folder = Directory.GetCurrentDirectory();
        if (_references.Folder != folder) _references = new ScriptReferences(folder);
        return _options.WithFilePath(FileName(cell)).WithMetadataResolver(_references).WithSourceResolver(new Microsoft.CodeAnalysis.SourceFileResolver([], folder));
    }
}
