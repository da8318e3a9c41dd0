namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>What a notebook's process says about code that is being written.</summary>
public sealed record CodeAnswer
{
    /// <summary>The answer where there is nothing to say, or where a cell is running and the process cannot be asked.</summary>
    public static CodeAnswer Empty { get; } = new();

    /// <summary>What could be written here, best first.</summary>
    public IReadOnlyList<CompletionChoice> Completions { get; init; } = [];

    /// <summary>Whether there are more completions than these: ask again once more letters are there.</summary>
    public bool HasMore { get; init; }

    /// <summary>What stands here, in Markdown; null where nothing is known of it.</summary>
    public string? Hover { get; init; }

    /// <summary>What is wrong with the code.</summary>
    public IReadOnlyList<CodeProblem> Problems { get; init; } = [];

    /// <summary>The values in scope.</summary>
    public IReadOnlyList<ScopeValue> Values { get; init; } = [];
}
