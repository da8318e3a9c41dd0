namespace SquadAnalytics.Notebooks.Running;

/// <summary>How it stands with the process of a notebook that a person works on.</summary>
public enum SessionState
{
    /// <summary>There is no process yet; the first cell that is run starts one.</summary>
    NotStarted,

    /// <summary>A process is being started.</summary>
    Starting,

    /// <summary>The process waits for a cell.</summary>
    Ready,

    /// <summary>A cell runs.</summary>
    Running,

    /// <summary>The process lay idle for so long that it was given up; running a cell starts another.</summary>
    GivenUp,

    /// <summary>The process came to its end in a cell; running a cell starts another.</summary>
    Ended,
}
