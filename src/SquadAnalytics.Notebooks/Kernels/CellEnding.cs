namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>How one cell came to its end.</summary>
public enum CellEnding
{
    /// <summary>The cell ran to its end.</summary>
    Completed,

    /// <summary>The cell is not meant for this runner and was passed over.</summary>
    Skipped,

    /// <summary>An earlier cell failed, so this one was never started.</summary>
    NotRun,

    /// <summary>The code does not compile, or its language is not available.</summary>
    DidNotCompile,

    /// <summary>The code threw an exception, or reported an error.</summary>
    Failed,

    /// <summary>The cell ran longer than it may and was stopped.</summary>
    TimeLimit,

    /// <summary>The cell needed more memory than it may and was stopped.</summary>
    MemoryLimit,

    /// <summary>The cell wrote more output than it may and was stopped.</summary>
    OutputLimit,

    /// <summary>The call stack was exhausted, which ends the notebook's process.</summary>
    StackOverflow,

    /// <summary>The notebook's process broke down.</summary>
    Crash,

    /// <summary>The cell ended the notebook's process itself.</summary>
    ProcessExit,

    /// <summary>A person stopped the cell.</summary>
    Cancelled,
}
