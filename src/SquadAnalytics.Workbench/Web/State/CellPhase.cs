namespace SquadAnalytics.Workbench.Web.State;

/// <summary>Whether a cell has its turn.</summary>
public enum CellPhase
{
    /// <summary>It does nothing.</summary>
    Idle,

    /// <summary>It will run after others.</summary>
    Waiting,

    /// <summary>It runs.</summary>
    Running,
}
