namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>The types of content in which a notebook's process hands values over.</summary>
public static class MimeTypes
{
    /// <summary>Plain text.</summary>
    public const string Text = "text/plain";

    /// <summary>HTML.</summary>
    public const string Html = "text/html";

    /// <summary>Markdown.</summary>
    public const string Markdown = "text/markdown";

    /// <summary>A vector figure.</summary>
    public const string Svg = "image/svg+xml";

    /// <summary>A picture, in Base64.</summary>
    public const string Png = "image/png";

    /// <summary>A table.</summary>
    public const string Csv = "text/csv";

    /// <summary>A finding, as JSON: its sentence, method and source.</summary>
    public const string Finding = "application/vnd.squadanalytics.finding+json";

    /// <summary>A table with its units, full-precision numbers and group sizes, as JSON.</summary>
    public const string Table = "application/vnd.squadanalytics.table+json";
}
