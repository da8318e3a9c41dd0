using System.Globalization;
using System.Text;
using SquadAnalytics.Change;
using SquadAnalytics.Reporting.Figures;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Writes a handout: words first, two pictures, the cautions, on one side of A4.</summary>
internal static class HandoutPage
{
    private const int EarlierShown = 6;

    private static readonly string Style = PageFrame.Style("handout.css");

    public static string Write(Handout handout)
    {
        var format = NumberFormat.For(handout.Tests);
        var protocol = handout.Latest.Protocol;
        var html = new StringBuilder("<main>\n<header>\n");
        if (handout.DataNote is { } note) html.Append("<p class=\"data-note\">").Append(Html.Sentence(note)).Append("</p>\n");
        html.Append("<h1>").Append(Html.Escape(handout.Label)).Append(": ").Append(Html.Escape(protocol.Name)).Append("</h1>\n");
        Paragraph(html, TheTest(protocol));
        html.Append("</header>\n");
        Heading(html, $"The latest test, {Day(handout.Latest.Date)}");
        Times(html, handout.Latest, format);
        Paragraph(html, TheSets(handout.Latest, format));
        Heading(html, "Is that a change?");
        foreach (var sentence in TheChange(handout, format)) Paragraph(html, sentence);
        Heading(html, handout.Tests.Count == 1 ? "The test" : $"All {Sentences.Plural(handout.Tests.Count, "test")} so far");
        Paragraph(html, TheSeason(handout, format));
        html.Append("<div class=\"pictures\">\n");
        Picture(html, Paced(handout), "The latest test, set by set", handout.Tests.Count > 1 ? "Thick line: the latest test. Faint lines: the tests before. Higher up is slower." : "Higher up is slower.");
        Picture(html, Season(handout, format), "Totals by date", $"Each dot is the total of one test. Higher up is slower. Small ups and downs are usual.{(handout.Latest.Protocol.BandsOn(handout.Latest.Date).Count > 0 ? " Dashed lines: where a band ends." : "")}");
        html.Append("</div>\n");
        Cautions(html, handout);
        html.Append("<p class=\"foot\">").Append(Html.Sentence($"Only {handout.Label}'s own tests are on this page. Questions about it: ask the coach. Questions about health: ask a doctor, not a stopwatch.")).Append("</p>\n</main>\n");
        return PageFrame.Write($"{handout.Label}: {protocol.Name}", Style, html.ToString());
    }

    private static string TheTest(Protocol protocol)
    {
        var work = protocol.Stations.Count == 0 ? "the same exercises each time" : Sentences.List([.. protocol.Stations.Select(static station => station.ToString())]);
        var clock = protocol.StartInterval is { } start ? $"A new set starts every {Clock(start)}, so a quicker set leaves more rest. " : "";
        return $"{protocol.Sets} sets of {work}. {clock}The seconds of all sets together are the total: the lower, the faster.";
    }

    private static void Times(StringBuilder html, Session session, NumberFormat format)
    {
        html.Append("<div class=\"times\" role=\"region\" tabindex=\"0\" aria-label=\"Seconds of each set\"><table>\n<caption class=\"unseen\">Seconds of each set</caption>\n<thead><tr>");
        foreach (var set in session.Sets) html.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">set {set.Set}</th>");
        html.Append("<th scope=\"col\">total</th></tr></thead>\n<tbody><tr>");
        foreach (var set in session.Sets) html.Append("<td>").Append(Html.Sentence(format.Time(set.Work!.Value))).Append("</td>");
        html.Append("<td class=\"total\">").Append(Html.Sentence(format.Time(session.Total.GetOrThrow()))).Append("</td></tr></tbody>\n</table></div>\n");
    }

    private static string TheSets(Session session, NumberFormat format)
    {
        var (quickest, slowest) = (session.Sets.MinBy(static set => set.Work!.Value.Value)!, session.Sets.MaxBy(static set => set.Work!.Value.Value)!);
        var band = session.Protocol.BandOf(session.Total.GetOrThrow(), session.Date) is { } found
            ? $" The total lies in the band {found.Name}, which goes from {NumberFormat.Fixed(found.Low.Value, 0)} to below {NumberFormat.Fixed(found.High.Value, 0)} s."
            : "";
        return $"The quickest set was set {Number(quickest.Set)} with {format.Time(quickest.Work!.Value)}, the slowest set {Number(slowest.Set)} with {format.Time(slowest.Work!.Value)}.{band}";
    }

    private static IReadOnlyList<string> TheChange(Handout handout, NumberFormat format) => handout.Change.Match<IReadOnlyList<string>>(
        change =>
        [
            $"{InPlainWords(change.Verdict)} The latest total was {format.Change(change.Change)} than {(change.Baseline.Count == 1 ? "the test before" : $"the average of the {Number(change.Baseline.Count)} tests before")}.",
            $"A total strays by about {format.Value(change.TypicalError)} from one test to the next although nothing has changed. Allowing for that, the true change may be anything from {format.ChangeLimits(change.Change)} ({change.Change.ConfidenceLevel} interval). A difference below {format.Value(change.Worthwhile.Estimate)} is counted as too small to matter.",
        ],
        refusal => refusal.Reason == Refusal.Suppressed
            ? ["Not said here: too few boxers have done this test often enough to know how far a total strays by itself."]
            : ["That cannot be told yet: it takes more tests before a change can be told from the test's own ups and downs."]);

    private static string InPlainWords(ChangeVerdict verdict) => verdict switch
    {
        ChangeVerdict.FasterWorthwhile => "Yes: faster, by more than this test strays by itself, and by enough to matter.",
        ChangeVerdict.SlowerWorthwhile => "Yes: slower, by more than this test strays by itself, and by enough to matter. Times alone do not say why.",
        ChangeVerdict.FasterSizeUnclear => "Faster, but by how much is not clear yet.",
        ChangeVerdict.SlowerSizeUnclear => "Slower, but by how much is not clear yet. Times alone do not say why.",
        ChangeVerdict.NoWorthwhileChange => "No: about the same as before.",
        _ => "Not clear: the difference is no larger than what this test strays by itself.",
    };

    private static string TheSeason(Handout handout, NumberFormat format) => handout.Tests.Count == 1
        ? "This was the first complete test. The next ones show what is usual."
        : $"The fastest total so far is {format.Time(handout.Fastest.Total.GetOrThrow())}, on {Day(handout.Fastest.Date)}. Nobody does a best in every test: of many tests, one is always the fastest.";

    private static HowWasItPaced Paced(Handout handout) => new(handout.Label, handout.Latest) { Earlier = [.. handout.Tests.SkipLast(1).TakeLast(EarlierShown)] };

    private static IsTheAthleteImproving Season(Handout handout, NumberFormat format) =>
        new(handout.Label, [.. handout.Tests.Select(static test => new DatedValue(test.Date, test.Total.GetOrThrow().Value))]) { Bands = handout.Latest.Protocol.BandsOn(handout.Latest.Date), Format = format };

    private static void Picture(StringBuilder html, Figure figure, string title, string caption)
    {
        using var drawing = figure.Draw(FigureSize.Narrow);
        html.Append("<figure>\n").Append(SvgPicture.Inline(SvgPicture.Of(drawing, figure.AlternativeText)))
            .Append("\n<figcaption><strong>").Append(Html.Sentence(title)).Append(".</strong> ").Append(Html.Sentence(caption)).Append("</figcaption>\n</figure>\n");
    }

    private static void Cautions(StringBuilder html, Handout handout)
    {
        IReadOnlyList<Caution> cautions = [Reporting.Cautions.Stop, Reporting.Cautions.HeadKnock, Reporting.Cautions.Illness, Reporting.Cautions.Heat, Reporting.Cautions.Clearance, .. handout.Athlete.IsJuniorOn(handout.Latest.Date) ? [Reporting.Cautions.Juniors] : Array.Empty<Caution>(), Reporting.Cautions.Judgement];
        Heading(html, "Take care");
        html.Append("<dl class=\"cautions\">\n");
        foreach (var caution in cautions) html.Append("<div><dt>").Append(Html.Escape(caution.Topic)).Append("</dt><dd>").Append(Html.Sentence(caution.Text)).Append("</dd></div>\n");
        html.Append("</dl>\n");
    }

    private static void Heading(StringBuilder html, string text) => html.Append("<h2>").Append(Html.Sentence(text)).Append("</h2>\n");

    private static void Paragraph(StringBuilder html, string text) => html.Append("<p>").Append(Html.Sentence(text)).Append("</p>\n");

    private static string Clock(Seconds time) => time.Value % 60 == 0 && time.Value >= 120 ? $"{Number((int)(time.Value / 60))} minutes" : $"{time.Value.ToString("0.#", CultureInfo.InvariantCulture)} seconds";

    private static string Day(DateOnly date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
