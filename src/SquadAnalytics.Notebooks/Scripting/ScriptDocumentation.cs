using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.QuickInfo;

namespace SquadAnalytics.Notebooks.Scripting;

/// <summary>The assemblies that cells refer to together with what their documentation says.</summary>
internal sealed class ScriptDocumentation
{
    private static readonly string FrameworkFolder = Path.GetDirectoryName(typeof(object).Assembly.Location)!;

    private readonly Dictionary<string, MetadataReference> _documented = new(StringComparer.Ordinal);
    private readonly Lazy<IReadOnlyList<string>> _framework = new(FrameworkWithDocumentation);

    /// <summary>The references of a compilation, with documentation where it lies beside them.</summary>
    public IEnumerable<MetadataReference> Of(Compilation? compilation)
    {
        if (compilation is null) return [];
        var own = compilation.References.OfType<PortableExecutableReference>().Where(static reference => reference.FilePath is not null).Select(static reference => reference.FilePath!);
        var paths = _framework.Value is { Count: > 0 } framework ? framework.Concat(own.Where(static path => Path.GetDirectoryName(path) != FrameworkFolder)) : own;
        return paths.Distinct().Select(Documented);
    }

    /// <summary>What the compiler knows about a place: the declaration, then its documentation.</summary>
    public static string? Markdown(QuickInfoItem item)
    {
        var declaration = TextOf(item, QuickInfoSectionKinds.Description);
        if (declaration.Length == 0) return null;
        var documentation = TextOf(item, QuickInfoSectionKinds.DocumentationComments);
        return documentation.Length == 0 ? declaration : $"{declaration}\n> {documentation}";
    }

    private static string TextOf(QuickInfoItem item, string kind) => item.Sections.FirstOrDefault(section => section.Kind == kind)?.Text ?? "";

    private MetadataReference Documented(string path)
    {
        if (!_documented.TryGetValue(path, out var reference))
            _documented[path] = reference = MetadataReference.CreateFromFile(path, documentation: XmlDocumentationProvider.CreateFromFile(Path.ChangeExtension(path, ".xml")));
        return reference;
    }

    /// <summary>An SDK brings the framework a second time, with documentation; none where there is only a runtime.</summary>
    private static IReadOnlyList<string> FrameworkWithDocumentation()
    {
        var packs = Path.Combine(FrameworkFolder, "..", "..", "..", "packs", "Microsoft.NETCore.App.Ref");
        if (!Directory.Exists(packs)) return [];
        var newest = Directory.GetDirectories(packs)
            .Select(static folder => (Folder: folder, Version: Version.TryParse(Path.GetFileName(folder), out var version) ? version : null))
            .Where(static pack => pack.Version?.Major == Environment.Version.Major)
            .OrderByDescending(static pack => pack.Version)
            .Select(static pack => Path.Combine(pack.Folder, "ref", $"net{pack.Version!.Major}.{pack.Version.Minor}"))
            .FirstOrDefault(Directory.Exists);
        return newest is null ? [] : Directory.GetFiles(newest, "*.dll");
    }
}
