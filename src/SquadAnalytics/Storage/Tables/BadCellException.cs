namespace SquadAnalytics.Storage.Tables;

/// <summary>Ends the reading of one row; carries what the reader reports about it.</summary>
internal sealed class BadCellException(CellProblem problem) : Exception(problem.ToString())
{
    public CellProblem Problem { get; } = problem;
}
