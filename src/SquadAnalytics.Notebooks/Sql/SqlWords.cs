using Microsoft.DotNet.Interactive.Events;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Notebooks.Sql;

/// <summary>Words to choose from while a query is written: tables, their columns, and the words of the language.</summary>
internal static class SqlWords
{
    private static readonly string[] Language =
    [
        "SELECT", "FROM", "WHERE", "GROUP BY", "HAVING", "ORDER BY", "LIMIT", "JOIN", "LEFT JOIN", "USING", "ON", "AS", "WITH", "DISTINCT", "CASE", "WHEN", "THEN", "ELSE", "END",
        "AND", "OR", "NOT", "IN", "BETWEEN", "LIKE", "IS NULL", "OVER", "PARTITION BY", "QUALIFY", "UNION ALL", "DESC", "DESCRIBE", "SUMMARIZE", "PIVOT",
        "count", "sum", "avg", "min", "max", "median", "quantile_cont", "stddev", "round", "coalesce", "lag", "lead", "row_number", "rank", "first", "last", "date_trunc", "date_diff",
    ];

    public static IEnumerable<CompletionItem> All(IReadOnlyList<KeyValuePair<string, Frame>> frames) =>
    [
        .. frames.Select(static frame => new CompletionItem(frame.Key, "Class", insertText: frame.Key, documentation: Table(frame.Key))),
        .. frames.SelectMany(static frame => frame.Value.Columns).DistinctBy(static column => column.Name, StringComparer.OrdinalIgnoreCase)
            .Select(static column => new CompletionItem(column.Name, "Field", insertText: column.Name, documentation: column.Description)),
        .. Language.Select(static word => new CompletionItem(word, "Keyword", insertText: word)),
    ];

    /// <summary>What a table or column is, or null where the word is neither.</summary>
    public static string? Describe(string word, IReadOnlyList<KeyValuePair<string, Frame>> frames)
    {
        var table = frames.FirstOrDefault(frame => string.Equals(frame.Key, word, StringComparison.OrdinalIgnoreCase));
        if (table.Value is { } found) return $"**{table.Key}**: {Table(table.Key) ?? "a result"}\n\n{string.Join(", ", found.Columns.Select(static column => column.Name))}";
        var columns = frames.SelectMany(frame => frame.Value.Columns.Select(column => (frame.Key, Column: column))).Where(one => string.Equals(one.Column.Name, word, StringComparison.OrdinalIgnoreCase)).ToList();
        if (columns.Count == 0) return null;
        return string.Join("\n\n", columns.GroupBy(static one => one.Column.Description ?? one.Column.Type.ToString()).Select(static same => $"{same.Key} ({string.Join(", ", same.Select(static one => one.Key))})"));
    }

    private static string? Table(string name) => SquadFrames.Names.Contains(name, StringComparer.OrdinalIgnoreCase) ? SquadFrames.Describe(name) : null;
}
