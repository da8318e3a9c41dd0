using Microsoft.DotNet.Interactive.CSharp;
using SquadAnalytics.Notebooks.Scripting;

namespace SquadAnalytics.Notebooks.Jupyter;

/// <summary>What the cells of the engine's own C# kernel have named.</summary>
internal sealed class EngineValues(CSharpKernel csharp) : ICellValues
{
    public IReadOnlyList<KeyValuePair<string, object?>> All() => csharp.ScriptState is { } state
        ? [.. state.Variables.GroupBy(static variable => variable.Name).Select(static group => KeyValuePair.Create(group.Key, (object?)group.Last().Value))]
        : [];

    public bool TryGet<T>(string name, out T? value)
    {
        value = default;
        if (!csharp.TryGetValue(name, out object? found) || found is not T fitting) return false;
        value = fitting;
        return true;
    }

    public Task SetAsync(string name, object value, Type type) => csharp.SetValueAsync(name, value, type);
}
