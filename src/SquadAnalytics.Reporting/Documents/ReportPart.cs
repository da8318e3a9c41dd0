namespace SquadAnalytics.Reporting.Documents;

/// <summary>A piece of a report, in reading order.</summary>
public abstract record ReportPart
{
    private protected ReportPart()
    {
    }

    /// <summary>The piece as HTML, safe to put into the page.</summary>
    public abstract string ToHtml();
}
