using System.Collections.Concurrent;
using System.Reflection;
using Xunit.Sdk;

[assembly: SquadAnalytics.Tests.NoteWhatRuns]

namespace SquadAnalytics.Tests;

/// <summary>Which values of the reference pack were read in this run, and which tests were run.</summary>
internal static class ReferenceReadings
{
    private static readonly ConcurrentDictionary<string, bool> Values = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<string, bool> Tests = new(StringComparer.Ordinal);

    public static void Add(string path) => Values.TryAdd(path, true);

    public static void Add(MethodInfo test) => Tests.TryAdd(Name(test), true);

    public static bool Contain(string path) => Values.ContainsKey(path);

    public static bool Contain(MethodInfo test) => Tests.ContainsKey(Name(test));

    private static string Name(MethodInfo test) => $"{test.DeclaringType}.{test.Name}";
}

/// <summary>Notes every test of the assembly as it begins.</summary>
[AttributeUsage(AttributeTargets.Assembly)]
internal sealed class NoteWhatRunsAttribute : BeforeAfterTestAttribute
{
    public override void Before(MethodInfo methodUnderTest) => ReferenceReadings.Add(methodUnderTest);
}
