namespace SquadAnalytics.Statistics;

/// <summary>Columns of a design that belong together: a number, a factor, an interaction.</summary>
internal sealed record DesignTerm(string Name, string[] ColumnNames, double[][] Columns);
