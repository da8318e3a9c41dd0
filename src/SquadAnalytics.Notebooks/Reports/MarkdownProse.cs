using Markdig;

namespace SquadAnalytics.Notebooks.Reports;

/// <summary>Turns the prose of a notebook into HTML; HTML written in the prose itself shows as text.</summary>
internal static class MarkdownProse
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().DisableHtml().UsePipeTables().UseEmphasisExtras().Build();

    public static string ToHtml(string markdown) => Markdown.ToHtml(markdown, Pipeline);
}
