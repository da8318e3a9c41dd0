using System.Reflection;
using System.Xml.Linq;

namespace SquadAnalytics.Workbench.Tests;

/// <summary>What the public documentation must say, checked on the file that ships beside the core.</summary>
public sealed class DocumentationTests
{
    private const string Core = "SquadAnalytics";
    private static readonly string[] Topics = ["Sets", "Reliability", "Change", "Load", "Standing", "Statistics"];

    [Fact]
    public void Every_analysis_that_may_refuse_says_how()
    {
        var pages = XDocument.Load(Path.ChangeExtension(typeof(Refusal).Assembly.Location, ".xml")).Descendants("member").ToDictionary(member => member.Attribute("name")!.Value);
        var analyses = Analyses().ToList();
        Assert.NotEmpty(analyses);
        var silent = analyses.Where(method => !NamesRefusals(pages[IdOf(method)], IdOf(method))).Select(method => $"{method.DeclaringType!.Name}.{method.Name}");
        Assert.Empty(silent);
    }

    private static IEnumerable<MethodInfo> Analyses() =>
        from type in typeof(Refusal).Assembly.GetExportedTypes()
        where Topics.Any(topic => type.Namespace == $"{Core}.{topic}")
        from method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
        where !method.IsSpecialName && method.ReturnType.IsGenericType && method.ReturnType.GetGenericTypeDefinition() == typeof(Answer<>)
        select method;

    /// <summary>Whether the returns name a refusal, or another method whose refusals they are, which is checked itself.</summary>
    private static bool NamesRefusals(XElement page, string id) =>
        page.Elements("returns").Descendants("see").Concat(page.Elements("inheritdoc").Where(taken => taken.Attribute("path")?.Value == "/returns"))
            .Select(reference => reference.Attribute("cref")?.Value)
            .Any(cref => cref is not null && cref != id && (cref.StartsWith($"F:{Core}.{nameof(Refusal)}.", StringComparison.Ordinal) || cref.StartsWith("M:", StringComparison.Ordinal)));

    /// <summary>The name under which the compiler documents a method.</summary>
    private static string IdOf(MethodInfo method)
    {
        var arity = method.IsGenericMethod ? $"``{method.GetGenericArguments().Length}" : "";
        return $"M:{method.DeclaringType!.FullName}.{method.Name}{arity}({string.Join(',', method.GetParameters().Select(parameter => IdOf(parameter.ParameterType)))})";
    }

    private static string IdOf(Type type) =>
        type.IsGenericMethodParameter ? $"``{type.GenericParameterPosition}"
        : type.IsArray ? IdOf(type.GetElementType()!) + "[]"
        : type.IsGenericType ? $"{type.GetGenericTypeDefinition().FullName!.Split('`')[0]}{{{string.Join(',', type.GetGenericArguments().Select(IdOf))}}}"
        : type.FullName!;
}
