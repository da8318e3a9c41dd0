namespace SquadAnalytics.Notebooks.Reports;

/// <summary>What a kept run is exported as.</summary>
public enum ExportKind
{
    /// <summary>One self-contained page, and the executed notebook.</summary>
    Html,

    /// <summary>A word-processor document with styles, numbered figures and tables, and references.</summary>
    Docx,

    /// <summary>Every table, and the sessions and sets of the squad, as CSV with a data package.</summary>
    Csv,

    /// <summary>Every figure as SVG and PNG, with its caption.</summary>
    Figures,
}
