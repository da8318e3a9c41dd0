namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>What an editor may ask a notebook's process about code that is being written; nothing is run for the answer.</summary>
public enum CodeQuestion
{
    /// <summary>What could be written here?</summary>
    Completions,

    /// <summary>What is this?</summary>
    Hover,

    /// <summary>What is wrong with the code?</summary>
    Problems,

    /// <summary>Which values are in scope?</summary>
    Values,
}
