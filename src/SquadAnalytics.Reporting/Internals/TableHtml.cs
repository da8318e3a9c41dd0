using System.Text;

namespace SquadAnalytics.Reporting.Internals;

/// <summary>Writes a table as accessible HTML.</summary>
internal static class TableHtml
{
    public static string Write(Table table)
    {
        var html = new StringBuilder();
        html.Append("<div class=\"table\" role=\"region\" tabindex=\"0\" aria-label=\"").Append(Html.Escape(table.Caption)).Append("\"><table>\n<caption>").Append(Html.Sentence(table.Caption)).Append("</caption>\n<thead><tr>");
        foreach (var column in table.Columns)
            html.Append("<th scope=\"col\"").Append(Class(column)).Append('>').Append(Html.Escape(column.Label)).Append("</th>");
        html.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            html.Append("<tr>");
            for (var k = 0; k < row.Count; k++) Cell(html, row[k], table.Columns[k], heading: k == 0);
            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>");
        foreach (var note in table.Notes) html.Append("<p class=\"note\">").Append(Html.Sentence(note)).Append("</p>");
        return html.Append("</div>\n").ToString();
    }

    private static void Cell(StringBuilder html, TableCell cell, TableColumn column, bool heading)
    {
        var text = Html.Sentence(cell.Text);
        if (heading) html.Append("<th scope=\"row\"").Append(Class(column)).Append('>').Append(text).Append("</th>");
        else if (cell.IsRefusal) html.Append(column.Alignment == ColumnAlignment.Right ? "<td class=\"refusal number\">" : "<td class=\"refusal\">").Append(text).Append("</td>");
        else html.Append("<td").Append(Class(column)).Append('>').Append(text).Append("</td>");
    }

    private static string Class(TableColumn column) => column.Alignment == ColumnAlignment.Right ? " class=\"number\"" : "";
}
