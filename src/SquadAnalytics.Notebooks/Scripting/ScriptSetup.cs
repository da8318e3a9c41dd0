using System.Collections.Concurrent;
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
    private readonly ConcurrentDictionary<string, ScriptReferences> _references = new(StringComparer.Ordinal);

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

    /// <summary>The options for a cell that is to run in a folder.</summary>
    public ScriptOptions For(int cell, string folder)
    {
        var references = _references.GetOrAdd(folder, static folder => new ScriptReferences(folder));
        return _options.WithFilePath(FileName(cell)).WithMetadataResolver(references).WithSourceResolver(new Microsoft.CodeAnalysis.SourceFileResolver([], folder));
    }
}
