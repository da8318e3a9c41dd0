namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>The student's report.</summary>
internal sealed class SeasonReportComparison() : ReportComparison("04-season-review")
{
    public override string Name => "season-report";
}
