namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>The strength coach's report.</summary>
internal sealed class SlowdownReportComparison() : ReportComparison("01-why-the-slowdown")
{
    public override string Name => "slowdown-report";
}
