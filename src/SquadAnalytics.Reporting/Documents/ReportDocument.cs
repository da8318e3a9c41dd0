namespace SquadAnalytics.Reporting.Documents;

/// <summary>
/// A finished report: one self-contained HTML page that makes no outside request, reads on a phone and prints on A4. The question and the
/// findings come first, then the parts in order, then what is needed to make it again, and the cautions.
/// </summary>
public sealed record ReportDocument
{
    /// <summary>Makes a report.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="question">The question it answers, as a sentence.</param>
    /// <exception cref="ArgumentException">A text is empty.</exception>
    public ReportDocument(string title, string question)
    {
        Title = string.IsNullOrWhiteSpace(title) ? throw new ArgumentException("A report needs a title.", nameof(title)) : title;
        Question = string.IsNullOrWhiteSpace(question) ? throw new ArgumentException("A report needs its question.", nameof(question)) : question;
    }

    /// <summary>Its title.</summary>
    public string Title { get; }

    /// <summary>The question it answers.</summary>
    public string Question { get; }

    /// <summary>Whom and what it is about, in a few words: squad, athlete, dates; null to leave it out.</summary>
    public string? Subject { get; init; }

    /// <summary>A line that says that the data are invented; null for a club's own.</summary>
    public string? DataNote { get; init; }

    /// <summary>The findings.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>The parts in reading order.</summary>
    public IReadOnlyList<ReportPart> Parts { get; init; } = [];

    /// <summary>What is needed to make it again, and the cautions.</summary>
    public ReportFoot Foot { get; init; } = new();

    /// <summary>The whole page.</summary>
    public string ToHtml() => ReportPage.Write(this);

    /// <summary>Everything that a reader of the page may read, alternative texts included, a text a line.</summary>
    public string Words() => SharedForms.WordsOf(System.Xml.Linq.XElement.Parse($"<root>{ReportPage.Body(this)}</root>"));
}
