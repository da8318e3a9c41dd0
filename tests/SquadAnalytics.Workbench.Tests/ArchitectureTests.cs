using System.Reflection;
using System.Runtime.CompilerServices;

namespace SquadAnalytics.Workbench.Tests;

/// <summary>The rules of the structure that must hold, checked on the built assemblies.</summary>
public sealed class ArchitectureTests
{
    private const string Core = "SquadAnalytics";
    private const string Archive = "SquadAnalytics.Archive";
    private const string Reporting = "SquadAnalytics.Reporting";
    private const string Notebooks = "SquadAnalytics.Notebooks";
    private const string Workbench = "SquadAnalytics.Workbench";

    private static readonly Dictionary<string, string[]> MayReference = new()
    {
        [Core] = [],
        [Archive] = [Core],
        [Reporting] = [Core],
        [Notebooks] = [Core, Archive, Reporting],
        [Workbench] = [Core, Archive, Reporting, Notebooks],
    };

    public static TheoryData<string> Assemblies => [.. Built().Select(assembly => assembly.GetName().Name!)];

    [Fact]
    public void Every_layer_is_there() =>
        Assert.Superset(new HashSet<string> { Core, Archive, Reporting, Notebooks, Workbench }, Built().Select(assembly => assembly.GetName().Name!).ToHashSet());

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void References_point_downwards_only(string name)
    {
        var ours = Load(name).GetReferencedAssemblies().Select(reference => reference.Name!).Where(reference => reference.StartsWith(Core, StringComparison.Ordinal));
        Assert.Subset(MayReference[name].ToHashSet(), ours.ToHashSet());
    }

    [Theory]
    [InlineData("Microsoft.DotNet.Interactive", Notebooks)]
    [InlineData("DuckDB", Archive)]
    [InlineData("ScottPlot", Reporting)]
    [InlineData("Microsoft.AspNetCore.Components", Workbench)]
    public void A_package_is_seen_by_one_project_only(string package, string owner)
    {
        foreach (var assembly in Built().Where(assembly => assembly.GetName().Name != owner))
            Assert.DoesNotContain(assembly.GetReferencedAssemblies(), reference => reference.Name!.StartsWith(package, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Public_classes_are_sealed_or_static_or_abstract(string name)
    {
        var open = Load(name).GetExportedTypes().Where(type => type.IsClass && !type.IsSealed && !type.IsAbstract && !IsComponent(type) && type.Name != "Program").Select(type => type.FullName);
        Assert.Empty(open);
    }

    [Theory]
    [InlineData(Core)]
    [InlineData(Reporting)]
    public void Records_are_immutable(string name)
    {
        var setters = from type in Load(name).GetExportedTypes()
                      where IsRecord(type)
                      from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                      where property.SetMethod is { IsPublic: true } setter && !setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))
                      select $"{type.Name}.{property.Name}";
        Assert.Empty(setters);
    }

    [Theory]
    [InlineData(Core)]
    [InlineData(Reporting)]
    public void No_tuple_or_dictionary_stands_in_the_public_surface(string name)
    {
        var loose = from type in Load(name).GetExportedTypes()
                    from member in type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
                    from shown in Shown(member)
                    where IsLoose(shown)
                    select $"{type.Name}.{member.Name}: {shown}";
        Assert.Empty(loose);
    }

    [Fact]
    public void No_type_is_named_like_its_namespace()
    {
        var alike = Built().SelectMany(assembly => assembly.GetExportedTypes()).Where(type => type.Namespace is { } space && space.Split('.')[^1] == type.Name && space != Core);
        Assert.Empty(alike);
    }

    private static IEnumerable<Assembly> Built() =>
        Directory.GetFiles(AppContext.BaseDirectory, Core + "*.dll")
            .Select(file => Path.GetFileNameWithoutExtension(file))
            .Where(name => MayReference.ContainsKey(name))
            .Select(Load);

    private static Assembly Load(string name) => Assembly.Load(new AssemblyName(name));

    // Page components and the framework's import markers are generated open.
    private static bool IsComponent(Type type) =>
        type.Name == "_Imports"
        || type.GetInterfaces().Any(face => face.FullName == "Microsoft.AspNetCore.Components.IComponent")
        || type.IsSubclassOf(typeof(Attribute));

    private static bool IsRecord(Type type) => type.GetMethod("<Clone>$") is not null;

    private static IEnumerable<Type> Shown(MemberInfo member) => member switch
    {
        MethodInfo method when !method.IsSpecialName && method.Name != "Deconstruct" => [method.ReturnType, .. method.GetParameters().Select(parameter => parameter.ParameterType)],
        PropertyInfo property => [property.PropertyType],
        _ => [],
    };

    private static bool IsLoose(Type type) => type.IsGenericType && type.GetGenericTypeDefinition().FullName is { } name
        && (name.StartsWith("System.ValueTuple", StringComparison.Ordinal)
            || name.StartsWith("System.Tuple", StringComparison.Ordinal)
            || name.Contains("Dictionary`", StringComparison.Ordinal));
}
