namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>An answer is shown as what it holds, in all forms that this has.</summary>
internal static class Answers
{
    /// <summary>The result of an answer, or its refusal; any other value as it is.</summary>
    public static object? Held(object? value)
    {
        if (value?.GetType() is not { IsGenericType: true } type || type.GetGenericTypeDefinition() != typeof(Answer<>)) return value;
        return type.GetProperty(nameof(Answer<>.Refusal))!.GetValue(value) ?? type.GetMethod(nameof(Answer<>.GetOrThrow))!.Invoke(value, []);
    }
}
