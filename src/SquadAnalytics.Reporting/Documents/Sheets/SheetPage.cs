using System.Globalization;
using System.Text;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Writes a recording sheet as a page that prints on A4.</summary>
internal static class SheetPage
{
    // A heat of no more lines stays on one page.
    private const int LongestUnbroken = 20;

    private static readonly string Style = PageFrame.Style("sheet.css");

    public static string Write(RecordingSheet sheet)
    {
        var html = new StringBuilder("<main>\n");
        foreach (var heat in sheet.Heats)
        {
            html.Append(sheet.Options.Stations || heat.Labels.Count > LongestUnbroken ? "<section class=\"heat\">\n" : "<section class=\"heat whole\">\n");
            Head(html, sheet, heat);
            if (sheet.Options.Stations) WithStations(html, sheet, heat);
            else Sets(html, sheet, heat);
            html.Append("</section>\n");
        }

        Foot(html, sheet);
        html.Append("</main>\n");
        var style = sheet.IsLandscape ? Style + "@page{size:A4 landscape}\nmain{max-width:68rem}\n" : Style;
        return PageFrame.Write($"{sheet.Protocol.Name}, {Day(sheet.Date)}", style, html.ToString());
    }

    private static void Head(StringBuilder html, RecordingSheet sheet, SheetHeat heat)
    {
        var title = sheet.Heats.Count == 1 ? sheet.Protocol.Name : $"{sheet.Protocol.Name}, heat {Number(heat.Number)} of {Number(sheet.Heats.Count)}";
        html.Append("<header>\n<div><h1>").Append(Html.Escape(title)).Append("</h1>\n<p>").Append(Html.Sentence($"{sheet.Squad}, {Day(sheet.Date)}. {Work(sheet.Protocol)}")).Append("</p></div>\n");
        html.Append("<p class=\"code\"><span>sheet</span> ").Append(Html.Escape(sheet.Code.ToString())).Append("</p>\n</header>\n");
        if (heat.Number == 1) html.Append("<p class=\"lines\"><span>Timekeeper</span><span>Place</span><span class=\"short\">Temperature, °C</span></p>\n");
    }

    private static void Sets(StringBuilder html, RecordingSheet sheet, SheetHeat heat)
    {
        html.Append("<table>\n<caption class=\"unseen\">Heat ").Append(Number(heat.Number)).Append(": seconds of each set</caption>\n<thead><tr><th scope=\"col\" class=\"place\">no.</th><th scope=\"col\" class=\"name\">name or code</th>");
        for (var set = 1; set <= sheet.Protocol.Sets; set++) SetHeading(html, sheet, set);
        html.Append("<th scope=\"col\">total<small>add up</small></th></tr></thead>\n<tbody>\n");
        foreach (var (label, place) in Lines(sheet, heat))
        {
            html.Append("<tr><td class=\"place\">").Append(place).Append(label.Length > 0 ? $"</td><th scope=\"row\" class=\"name\">{Html.Escape(label)}</th>" : "</td><td class=\"name\"></td>");
            for (var box = 0; box <= sheet.Protocol.Sets; box++) html.Append("<td></td>");
            html.Append("</tr>\n");
        }

        html.Append("</tbody>\n</table>\n");
    }

    private static void WithStations(StringBuilder html, RecordingSheet sheet, SheetHeat heat)
    {
        foreach (var (label, place) in Lines(sheet, heat))
        {
            html.Append("<table class=\"stations\">\n<caption><span class=\"again\">sheet ").Append(Html.Escape(sheet.Code.ToString())).Append("</span><span class=\"place\">").Append(place).Append("</span> ").Append(label.Length > 0 ? Html.Escape(label) : "name:").Append("</caption>\n<thead><tr><th scope=\"col\" class=\"set\">set</th>");
            foreach (var station in sheet.Protocol.Stations) html.Append("<th scope=\"col\">").Append(Html.Escape(station.Name)).Append("</th>");
            html.Append("<th scope=\"col\">whole set</th></tr></thead>\n<tbody>\n");
            for (var set = 1; set <= sheet.Protocol.Sets; set++)
            {
                html.Append("<tr><th scope=\"row\" class=\"set\">").Append(Number(set)).Append(Start(sheet, set)).Append("</th>");
                for (var box = 0; box <= sheet.Protocol.Stations.Count; box++) html.Append("<td></td>");
                html.Append("</tr>\n");
            }

            html.Append("</tbody>\n</table>\n");
        }
    }

    /// <summary>The labels with their places; the last heat has empty lines for newcomers.</summary>
    private static IEnumerable<(string Label, string Place)> Lines(RecordingSheet sheet, SheetHeat heat)
    {
        var before = sheet.Heats.Take(heat.Number - 1).Sum(static earlier => earlier.Labels.Count);
        var empty = heat.Number == sheet.Heats.Count ? sheet.Options.EmptyLines : 0;
        return heat.Labels.Concat(Enumerable.Repeat("", empty)).Select((label, k) => (label, Number(before + k + 1)));
    }

    private static void SetHeading(StringBuilder html, RecordingSheet sheet, int set) =>
        html.Append("<th scope=\"col\">set ").Append(Number(set)).Append(Start(sheet, set)).Append("</th>");

    private static string Start(RecordingSheet sheet, int set) => sheet.Starts.Count > 0 ? $"<small>start {Clock(sheet.Starts[set - 1])}</small>" : "";

    private static void Foot(StringBuilder html, RecordingSheet sheet)
    {
        html.Append("<footer>\n");
        Paragraph(html, "Write", $"the seconds from the start of the set to its finish, not the clock: 62.4, or 1:02.4. DNF: not finished. DNS: not started.{(sheet.Options.Stations ? " At a station: the seconds spent there." : "")}{(sheet.Heats.Count > 1 ? " Each heat starts its own clock at 0:00." : "")}");
        Paragraph(html, "Type in", $"with the line \"sheet {sheet.Code}\" above the names, or fill in the table that comes with this sheet: date and protocol are then known.");
        if (sheet.NotCleared.Count > 0) Paragraph(html, "Not listed", $"not everybody is on this sheet today ({Sentences.Plural(sheet.NotCleared.Count, "athlete")}). Before adding a name by hand, the coach looks in the logbook.");
        foreach (var caution in (IReadOnlyList<Caution>)[Cautions.Stop, Cautions.HeadKnock, Cautions.Heat, Cautions.Illness, Cautions.Clearance]) Paragraph(html, caution.Topic, caution.Text);
        html.Append("</footer>\n");
    }

    private static void Paragraph(StringBuilder html, string topic, string text) => html.Append("<p><strong>").Append(Html.Escape(topic)).Append(".</strong> ").Append(Html.Sentence(text)).Append("</p>\n");

    private static string Work(Protocol protocol)
    {
        var stations = protocol.Stations.Count == 0 ? "" : $" of {Sentences.List([.. protocol.Stations.Select(static station => station.ToString())])}";
        return $"{Number(protocol.Sets)} sets{stations}{(protocol.StartInterval is { } start ? $", a start every {Clock(start)}" : "")}{(protocol.StartRule == StartRule.StopAtMissedStart ? "; a missed start ends the test" : "")}.";
    }

    private static string Clock(Seconds time)
    {
        var seconds = time.Value % 60;
        return string.Create(CultureInfo.InvariantCulture, $"{(int)(time.Value / 60)}:{(seconds == Math.Floor(seconds) ? seconds.ToString("00", CultureInfo.InvariantCulture) : seconds.ToString("00.##", CultureInfo.InvariantCulture))}");
    }

    private static string Day(DateOnly date) => date.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
