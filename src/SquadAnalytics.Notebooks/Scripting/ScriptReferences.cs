using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;

namespace SquadAnalytics.Notebooks.Scripting;

/// <summary>Finds the assemblies that cells refer to, each once, however many cells ask for it.</summary>
/// <param name="folder">The folder from which relative paths of <c>#r</c> are meant.</param>
internal sealed class ScriptReferences(string folder) : MetadataReferenceResolver
{
    private readonly ScriptMetadataResolver _files = ScriptMetadataResolver.Default.WithBaseDirectory(folder);
    private readonly ConcurrentDictionary<(string Reference, string? File, MetadataReferenceProperties Properties), ImmutableArray<PortableExecutableReference>> _named = new();
    private readonly ConcurrentDictionary<AssemblyIdentity, PortableExecutableReference?> _missing = new();

    public override bool ResolveMissingAssemblies => true;

    public override ImmutableArray<PortableExecutableReference> ResolveReference(string reference, string? baseFilePath, MetadataReferenceProperties properties) =>
        _named.GetOrAdd((reference, baseFilePath, properties), key => _files.ResolveReference(key.Reference, key.File, key.Properties));

    public override PortableExecutableReference? ResolveMissingAssembly(MetadataReference definition, AssemblyIdentity referenceIdentity) =>
        _missing.GetOrAdd(referenceIdentity, identity => _files.ResolveMissingAssembly(definition, identity));

    public override bool Equals(object? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(folder);
}
